// Finds sentences that stand in a page instead of the catalogue: in markup, in attributes that are read, and in scripts.
import ts from 'typescript';
import { markup, script, type Markup } from './sources.ts';

/** Two letters in a row are a word; a lone letter or a sign is a mark on a drawing. */
const WORD = /\p{L}{2,}/u;
/** In a script a text of one word is as a rule a name for the machine; several words, or a word and a full stop, are not. */
const SENTENCE = /\p{L}{2,}[,:;]? +\p{L}+|^\p{Lu}\p{Ll}+.*[.!?…]$/u;
/** Attributes and fields whose text somebody reads or hears. */
const READ = new Set(
  [
    'alt',
    'aria-description',
    'aria-label',
    'aria-roledescription',
    'aria-valuetext',
    'below',
    'caption',
    'head',
    'hint',
    'label',
    'lead',
    'legend',
    'meaning',
  ].concat(['message', 'more', 'note', 'placeholder', 'purpose', 'said', 'sentence', 'summary', 'text', 'title', 'tooltip', 'why', 'word', 'words']),
);
const SILENT = new Set(['Comment', 'StyleDirective', 'ClassDirective']);
/** Take the name of elements or of a feature of the screen, not something to be read. */
const FINDS = /(querySelector(All)?|closest|matches|matchMedia)$/;

/** What a page says by itself, in the order of the file. */
export function literals(file: string, text: string): string[] {
  const inMarkup = file.endsWith('.svelte') ? saidIn(markup(text)) : [];
  return [...inMarkup, ...saidBy(script(file, text))].map((said) => said.trim());
}

const isNode = (value: unknown): value is Markup => typeof value === 'object' && value !== null && typeof (value as Markup).type === 'string';
const inside = (node: Markup): Markup[] =>
  Object.values(node)
    .flat()
    .filter((value) => isNode(value));

function saidIn(node: Markup): string[] {
  if (SILENT.has(node.type)) return [];
  if (node.type === 'Text') return worded(node.data);
  if (node.type === 'ExpressionTag') return shownBy(node.expression as Markup);
  if (node.type === 'Attribute') {
    const parts = [node.value].flat().filter((part) => isNode(part));
    return READ.has(node.name ?? '') ? parts.flatMap(saidIn) : [];
  }
  return inside(node).flatMap(saidIn);
}

/** The texts among which an expression chooses, or that it joins. */
function shownBy(node: Markup): string[] {
  if (node.type === 'Literal') return worded(node.value);
  if (node.type === 'TemplateLiteral') return inside(node).flatMap(shownBy);
  if (node.type === 'TemplateElement') return worded((node.value as { cooked: string }).cooked);
  if (node.type === 'ConditionalExpression') return [node.consequent, node.alternate].flatMap((each) => shownBy(each as Markup));
  if (node.type === 'LogicalExpression' || (node.type === 'BinaryExpression' && node.operator === '+')) {
    return [node.left, node.right].flatMap((each) => shownBy(each as Markup));
  }
  return [];
}

const worded = (text: unknown): string[] => (typeof text === 'string' && WORD.test(text) ? [text] : []);

function saidBy(node: ts.Node): string[] {
  // What is imported, what is a type, and what an error tells the reader of the console.
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return [];
  if (ts.isNewExpression(node) && node.expression.getText().endsWith('Error')) return [];
  if (ts.isCallExpression(node) && FINDS.test(node.expression.getText())) {
    return saidBy(node.expression);
  }
  if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) {
    const read = ts.isPropertyAssignment(node.parent) && READ.has(node.parent.name.getText());
    return (read ? WORD : SENTENCE).test(node.text) ? [node.text] : [];
  }
  const found: string[] = [];
  ts.forEachChild(node, (child) => {
    found.push(...saidBy(child));
  });
  return found;
}

// The pseudo-language: English with an accent on every letter, longer than English, and each message between ⟦ and ⟧. Whoever reads
// the pages in it sees what does not come from the catalogue, what is joined from pieces, and what has no room to grow.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse, serialize, TextElement, Transformer } from '@fluent/syntax';
import { language } from './files.js';

export const PSEUDO = 'en-XA';

const PLAIN = 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ';
const ACCENTED = [...'áƀçðéƒĝĥíĵķļɱñóþɋŕšţúṽŵẋýžÁƁÇÐÉƑĜĤÍĴĶĻṀÑÓÞɊŔŠŢÚṼŴẊÝŽ'];
const accents = new Map([...PLAIN].map((letter, at) => [letter, ACCENTED[at] ?? letter]));
/** Fills up what a message is longer than in English: of every ten letters, four more. */
export const FILLING = '~';
const LONGER = 0.4;
/** A filling is broken into words as a text is. */
const WORD = 6;

/**
 * A text with an accent on every letter.
 * @param {string} text
 */
export const accented = (text) => [...text].map((letter) => accents.get(letter) ?? letter).join('');

/** Accents the texts of a pattern, not its selectors, and counts the letters of the longest form. */
class Accents extends Transformer {
  letters = 0;

  visitTextElement(element) {
    this.letters += element.value.replace(/[^A-Za-z]/g, '').length;
    element.value = accented(element.value);
    return element;
  }

  visitSelectExpression(choice) {
    const before = this.letters;
    const forms = choice.variants.map((variant) => {
      this.letters = before;
      this.visit(variant.value);
      return this.letters;
    });
    this.letters = Math.max(...forms);
    return choice;
  }
}

function filling(letters) {
  const signs = FILLING.repeat(Math.ceil(letters * LONGER));
  return (signs.match(new RegExp(`.{1,${WORD}}`, 'g')) ?? []).map((word) => ` ${word}`).join('');
}

/**
 * A file of English words in the pseudo-language. The signs of numbers are no words.
 * @param {string} text
 */
export function pseudo(text) {
  const resource = parse(text, { withSpans: false });
  for (const entry of resource.body) {
    if (entry.type !== 'Message' || !entry.value || entry.id.name.startsWith('number-')) continue;
    const accents = new Accents();
    accents.visit(entry.value);
    entry.value.elements = [new TextElement('⟦'), ...entry.value.elements, new TextElement(`${filling(accents.letters)}⟧`)];
  }
  return serialize(resource, {});
}

/** The pseudo-language as the pages fetch it. */
export const pseudoLanguage = () => language('en', pseudo);

/**
 * Texts by their keys in the pseudo-language.
 * @param {Record<string, string>} texts
 */
const pseudoTexts = (texts) =>
  Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, `⟦${accented(text)}${filling(text.replace(/[^A-Za-z]/g, '').length)}⟧`]));

// Run by itself it writes the file that a site would have, and from the English texts of jobs, packs and tables those for the core.
if (process.argv[1]?.endsWith('pseudo.js')) {
  const folder = join(import.meta.dirname, '../../../.build/words');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${PSEUDO}.json`), JSON.stringify(pseudoLanguage()));
  const texts = JSON.parse(readFileSync(join(folder, 'texts.json'), 'utf8'));
  writeFileSync(join(folder, `${PSEUDO}.texts.json`), JSON.stringify(pseudoTexts(texts)));
  console.log(`The pseudo-language is in .build/words/${PSEUDO}.json`);
}

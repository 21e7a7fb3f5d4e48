// What a page in the pseudo-language shows that no language could have changed: texts beside the catalogue, and sentences that
// are joined from pieces. What the owner entered is read from the door.
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';

const UNITS = new URL('../../../bindings/generated/units.json', import.meta.url);

/** Two letters in a row; a letter alone is a mark on a drawing. */
const WORD = /\p{L}{2,}/u;
/** A name of the machine: `inProgress`. Where a page shows one, it shows no word. */
const MACHINE = /^[a-z]+([A-Z][a-z0-9]*)*$/;
/** Where one word is a name that somebody gave: of a tool, or a name broken into the lines of a drawing. */
const GIVEN = new Set(['lines', 'tools', 'supplies']);

/** Every text in a value. Of a message only what was entered counts: the rest has its words in the catalogue. */
export function textsIn(value: unknown, field = ''): string[] {
  if (typeof value === 'string') return MACHINE.test(value) && !GIVEN.has(field) ? [] : [value];
  if (typeof value !== 'object' || value === null) return [];
  if ('messageId' in value && 'arguments' in value) return entered(value.arguments);
  if (Array.isArray(value)) return value.flatMap((each) => textsIn(each, field));
  return Object.entries(value).flatMap(([name, each]) => textsIn(each, name));
}

function entered(given: unknown): string[] {
  if (typeof given !== 'object' || given === null) return [];
  if ('kind' in given && given.kind === 'text' && 'text' in given) return [String(given.text)];
  return Object.values(given).flatMap(entered);
}

const symbols = (JSON.parse(readFileSync(UNITS, 'utf8')) as { symbol: string }[]).map(({ symbol }) => symbol);

/** Keeps what the door answered, as it came, for `answered`. */
export const keepAnswers = (page: Page) =>
  page.addInitScript(() => {
    const read = JSON.parse.bind(JSON);
    const answers: unknown[] = [];
    JSON.parse = (text: string, ...rest) => {
      // Read twice: the pages put words into theirs.
      answers.push(read(text));
      return read(text, ...rest) as unknown;
    };
    Object.assign(globalThis, { answers });
  });

/** The texts that the door answered with since it was last asked for them. */
export const answered = async (page: Page) => textsIn(await page.evaluate(() => (globalThis as { answers?: unknown[] }).answers?.splice(0)));

export interface Said {
  /** Where it stands: an element, or an attribute of one. */
  at: string;
  text: string;
}

/** Everything that a page says but equations, which no language changes: each text node and each attribute that is read on its own. */
export const saidOn = (page: Page): Promise<Said[]> =>
  page.evaluate(() => {
    const nameOf = (element: Element) => `${element.tagName.toLowerCase()}${element.classList.length > 0 ? `.${[...element.classList].join('.')}` : ''}`;
    const found: { at: string; text: string }[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const parent = walk.currentNode.parentElement;
      if (parent && !parent.closest('script, style, noscript, [translate="no"]'))
        found.push({
          at: nameOf(parent),
          text: walk.currentNode.textContent ?? '',
        });
    }
    for (const name of ['aria-label', 'aria-description', 'aria-roledescription', 'aria-valuetext', 'title', 'alt', 'placeholder']) {
      for (const element of document.querySelectorAll(`[${name}]`))
        found.push({
          at: `${nameOf(element)}[${name}]`,
          text: element.getAttribute(name) ?? '',
        });
    }
    return found;
  });

/** A text without its messages, and how many there were beside each other. */
export function outside(text: string): { rest: string; messages: number } {
  let depth = 0;
  let messages = 0;
  let rest = '';
  for (const sign of text) {
    if (sign === '⟦') {
      if (depth === 0) messages += 1;
      depth += 1;
    } else if (sign === '⟧') depth = Math.max(0, depth - 1);
    else if (depth === 0) rest += sign;
  }
  return { rest, messages };
}

/** Takes away what may stand beside the catalogue; what is left has letters or not. */
export class Allowance {
  readonly #texts: string[];
  readonly #units: RegExp;

  constructor(texts: string[]) {
    this.#texts = [...new Set(texts.map((text) => spaced(text.replace(/[⟦⟧]/g, ''))))].filter((text) => text.length > 0).sort((one, other) => other.length - one.length);
    const escaped = symbols.filter((symbol) => WORD.test(symbol)).map((symbol) => symbol.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'));
    this.#units = new RegExp(`(?<!\\p{L})(${escaped.sort((one, other) => other.length - one.length).join('|')})(?!\\p{L})`, 'gu');
  }

  left(text: string): string {
    let rest = spaced(text);
    if (!WORD.test(rest)) return '';
    for (const known of this.#texts) if (rest.includes(known) && (known.length > 3 || rest === known)) rest = rest.replaceAll(known, ' ');
    rest = rest.replace(this.#units, ' ');
    return WORD.test(rest) ? rest.trim() : '';
  }
}

const spaced = (text: string) => text.replace(/\s+/g, ' ').trim();

/** What of a page stands beside the catalogue. */
export const beside = (said: Said[], allowance: Allowance) =>
  said.flatMap(({ at, text }) => {
    const left = allowance.left(outside(text).rest);
    return left ? [`${at}: ${left}`] : [];
  });

/** Texts that are joined from messages beside each other. */
export const joined = (said: Said[]) => said.filter(({ text }) => outside(text).messages > 1).map(({ at, text }) => `${at}: ${text}`);

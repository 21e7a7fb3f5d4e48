// The languages of the catalogue as they lie in `fixtures/words`: a folder each, with the same files as English or some of them.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { FluentResource } from '@fluent/bundle';
import { parse } from '@fluent/syntax';

const WORDS = join(import.meta.dirname, '../../../fixtures/words');
const CONTENT = join(import.meta.dirname, '../../../.build/words');
export const ENGLISH = 'en';
/** What a language consists of: the words of the pages, and those of what the core says. */
export const PARTS = /** @type {const} */ (['pages', 'core']);

/** The tags of all languages, English first. */
export function tags() {
  const folders = readdirSync(WORDS, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return [
    ENGLISH,
    ...folders
      .map((entry) => entry.name)
      .filter((tag) => tag !== ENGLISH)
      .sort(),
  ];
}

/**
 * The files of one part of a language.
 * @param {string} tag
 * @param {string} part
 */
export function files(tag, part) {
  const folder = join(WORDS, tag, part);
  const names = existsSync(folder) ? /** @type {string[]} */ (readdirSync(folder, { recursive: true })) : [];
  return names
    .filter((name) => name.endsWith('.ftl'))
    .sort()
    .map((name) => ({ name: `${part}/${name}`, at: join(folder, name), text: readFileSync(join(folder, name), 'utf8') }));
}

/**
 * Each id of a file with its text, as `@fluent/bundle` resolves it. That parser skips what it cannot read, so the strict one reads first.
 * @param {string} name
 * @param {string} text
 * @returns {Record<string, unknown>}
 */
export function compiled(name, text) {
  for (const entry of parse(text, { withSpans: false }).body) {
    if (entry.type === 'Junk') throw new Error(`${name} cannot be read here: ${entry.content.trim()}`);
  }
  return Object.fromEntries(new FluentResource(text).body.map(({ id, value }) => [id, value]));
}

/**
 * A language as the pages fetch it.
 * @param {string} tag
 * @param {(text: string) => string} change
 * @returns {Record<'pages' | 'core', Record<string, unknown>>}
 */
export function language(tag, change = (text) => text) {
  const part = (/** @type {string} */ name) => Object.assign({}, ...files(tag, name).map((file) => compiled(file.name, change(file.text))));
  return { pages: part('pages'), core: part('core') };
}

/**
 * What jobs, packs and tables say in a language, as the core takes it. `cargo xtask build` writes it.
 * @param {string} tag
 */
export const content = (tag) => readFileSync(join(CONTENT, `${tag}.content.json`), 'utf8');

/** Each language with the name that it gives itself. */
export function languages() {
  return tags().map((tag) => ({ tag, name: String(language(tag).core['language-name'] ?? tag) }));
}

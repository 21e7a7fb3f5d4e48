// The pages in the pseudo-language, and a person who reads it: what a test looks for in English is found in its accents.
import { readFile } from 'node:fs/promises';
import { accented, FILLING, PSEUDO, pseudoLanguage } from '../../../mobile-shell/ui/languages/pseudo.js';

const FILL = `⟦⟧${FILLING}`;
const language = JSON.stringify(pseudoLanguage());
/** What jobs, packs and tables say in it; `cargo xtask words --pseudo` writes it. */
const CONTENT = new URL(`../../../.build/words/${PSEUDO}.content.json`, import.meta.url);

/**
 * Serves the pseudo-language, which no site ships, and chooses it on every page to come.
 * @param {import('@playwright/test').BrowserContext} context
 */
export async function speakPseudo(context) {
  await context.route(`**/words/${PSEUDO}.json`, (route) => route.fulfill({ contentType: 'application/json', body: language }));
  const content = await readFile(CONTENT, 'utf8');
  await context.route(`**/words/${PSEUDO}.content.json`, (route) => route.fulfill({ contentType: 'application/json', body: content }));
  await context.addInitScript((tag) => {
    const kept = JSON.parse(localStorage.getItem('layshaft.settings') ?? '{}');
    localStorage.setItem('layshaft.settings', JSON.stringify({ ...kept, language: tag }));
  }, PSEUDO);
}

/**
 * Looks for the same words with or without accents, whatever fills them up.
 * @param {string} source
 */
function inAccents(source) {
  let pattern = '';
  let within = false;
  for (let at = 0; at < source.length; at += 1) {
    const sign = source[at];
    if (sign === '\\') pattern += sign + source[++at];
    else if (sign === '[' || sign === ']') {
      within = sign === '[';
      pattern += sign;
    } else if (within) pattern += sign;
    else if (sign === '^') pattern += `^[${FILL}]*`;
    else if (sign === '$') pattern += `[\\s${FILL}]*$`;
    else if (sign === ' ') pattern += `[\\s${FILL}]+`;
    else if (/[A-Za-z]/.test(sign)) pattern += `[${sign}${accented(sign)}][${FILL}]*`;
    else if (/[:,.0-9]/.test(sign)) pattern += `[\\s${FILL}]*${sign}`;
    else pattern += sign;
  }
  return pattern;
}

const escaped = (text) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** A text or an expression, as a test gives it, for the pseudo-language. */
function words(given, exact) {
  if (given instanceof RegExp) return new RegExp(inAccents(given.source), given.flags);
  const pattern = inAccents(exact ? `^${escaped(given)}$` : escaped(given));
  return new RegExp(pattern, exact ? '' : 'i');
}

/** `:has-text("Paint")` in a selector. */
const selector = (given) => given.replace(/:has-text\("([^"]*)"\)/g, (whole, text) => `:is(${whole}, :has-text("${accented(text)}"))`);

const plain = (options) => {
  const { name, exact, hasText, ...rest } = options ?? {};
  return { ...rest, ...(name !== undefined && { name: words(name, exact) }), ...(hasText !== undefined && { hasText: words(hasText) }) };
};

const READS = {
  getByRole: (role, options) => [role, plain(options)],
  getByText: (text, options) => [words(text, options?.exact)],
  getByLabel: (text, options) => [words(text, options?.exact)],
  locator: (css, options) => [typeof css === 'string' ? selector(css) : css, plain(options)],
  filter: (options) => [plain(options)],
  fill: (text) => [accented(text)],
};
const KEEPS = new Set(['first', 'last', 'nth', 'or', 'and']);

/**
 * A page or a part of it, for whoever knows its English words.
 * @template {object} T
 * @param {T} where
 * @returns {T}
 */
export function readInPseudo(where) {
  return new Proxy(where, {
    get(target, name) {
      const value = Reflect.get(target, name);
      if (typeof value !== 'function') return value;
      const reads = READS[name];
      if (reads) {
        return (...given) => {
          const found = value.apply(target, reads(...given));
          return name === 'fill' ? found : readInPseudo(found);
        };
      }
      return KEEPS.has(name) ? (...given) => readInPseudo(value.apply(target, given)) : value.bind(target);
    },
  });
}

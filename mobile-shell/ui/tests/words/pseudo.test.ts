// The pseudo-language and the comparison of languages: what is changed in a message, and what is found between two.
import { expect, test } from 'vitest';
import { compared, english as englishMessages, messages } from '../../languages/messages.js';
import { pseudo, pseudoLanguage } from '../../languages/pseudo.js';
import { compiled, language, tags } from '../../languages/files.js';

test('every text gets accents and grows, and what is filled in stays as it is', () => {
  expect(pseudo('a-b = Save it\n')).toBe('a-b = ⟦Šáṽé íţ ~~~⟧\n');
  expect(pseudo('a-b = { QUANTITY($x, decimals: 2, unit: "none") } of { $all }\n')).toBe('a-b = ⟦{ QUANTITY($x, decimals: 2, unit: "none") } óƒ { $all } ~⟧\n');
  const chosen = 'a-b =\n    { $jobs ->\n        [one] one job\n       *[other] { $jobs } jobs\n    }\n';
  expect(pseudo(chosen)).toBe('a-b =\n    ⟦{ $jobs ->\n        [one] óñé ĵóƀ\n       *[other] { $jobs } ĵóƀš\n    } ~~~⟧\n');
  expect(pseudo('number-group = { "\\u202F" }\n')).toBe('number-group = { "\\u202F" }\n');
});

test('it has every message of English, and the plain ones are longer by two fifths', () => {
  const [made, english] = [pseudoLanguage(), language('en')];
  expect(Object.keys(english.pages).length).toBeGreaterThan(1_500);
  expect(Object.keys(made.pages)).toEqual(Object.keys(english.pages));
  expect(Object.keys(made.core)).toEqual(Object.keys(english.core));
  const [id, text] = ['device-title', english.pages['device-title'] as string];
  expect(text).toBe('This device');
  // Ten letters: four signs more, a space before them, and the two ends.
  expect((made.pages[id] as string).length).toBe(text.length + 4 + 1 + 2);
});

test('a file that cannot be read is refused by its name', () => {
  expect(() => compiled('shell.ftl', 'no message at all')).toThrow('shell.ftl cannot be read here');
});

test('what a language lacks, has too much, or asks for in vain is found', () => {
  const message = (id: string, text: string, names: string[] = []) => ({ part: 'pages' as const, file: 'pages/a.ftl', id, text, names });
  const english = [message('a', '{ $x } left', ['x']), message('b', 'Save')];
  expect(compared(english, english)).toEqual({ missing: [], superfluous: [], unknown: [] });
  const other = [message('a', '{ $y } { SHOUT($x) }', ['x', 'y']), message('c', 'more')];
  expect(compared(english, other)).toEqual({ missing: ['b'], superfluous: ['c'], unknown: ['a: there is no $y', 'a: there is no SHOUT()'] });
});

test('no language of the catalogue has words for what English has not, or asks for what nobody hands over', () => {
  const english = englishMessages();
  expect(english.length).toBeGreaterThan(4_000);
  const found = tags().map((tag) => ({ tag, ...compared(english, messages(tag)) }));
  expect(found.flatMap(({ tag, superfluous, unknown }) => [...superfluous, ...unknown].map((each) => `${tag}: ${each}`))).toEqual([]);
});

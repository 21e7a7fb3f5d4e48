// A further language over English: which one is taken, what it says, what it leaves to English, and how it writes numbers.
import { afterEach, expect, test, vi } from 'vitest';
import { languages, takeLanguage, wantedTag } from '../../src/app/language.ts';
import { settings } from '../../src/app/settings.svelte.ts';
import { Typed } from '../../src/parts/fields/NumberPad.svelte.ts';
import { amount, digits } from '../../src/show/number.ts';
import { keys, t } from '../../src/words/index.ts';
import { say } from '../../src/words/messages.ts';
import { bestMatch, fetchLanguage, speak, spokenTag, type Language } from '../../src/words/spoken.ts';
import { compiled } from '../../languages/files.js';

const words = (text: string) => compiled('made up', text) as Language['pages'];
const SIGNS = 'number-decimal = ,\nnumber-group = .\n';
const made = (pages: string, core = SIGNS): Language => ({ tag: 'pl', pages: words(pages), core: words(core) });
const answer = (body: unknown, ok = true) => vi.fn(() => Promise.resolve({ ok, json: () => Promise.resolve(body) } as Response));

afterEach(() => {
  speak(null);
  settings.setLanguage('device');
  vi.restoreAllMocks();
});

test('the best match is the same tag, else the same language, in the order of the wishes', () => {
  const atHand = ['en', 'de', 'pt-BR', 'pt-PT'];
  expect(bestMatch(['pt-PT', 'de'], atHand)).toBe('pt-PT');
  expect(bestMatch(['DE-at', 'pt-PT'], atHand)).toBe('de');
  expect(bestMatch(['pt'], atHand)).toBe('pt-BR');
  expect(bestMatch(['fi', 'en-US', 'de'], atHand)).toBe('en');
  expect(bestMatch(['fi'], atHand)).toBe('en');
  expect(bestMatch([], atHand)).toBe('en');
});

test('what was chosen goes before what the device asks for, and English names itself', () => {
  expect(languages[0]).toEqual({ tag: 'en', name: 'English' });
  expect(wantedTag('device', ['fi', 'en-GB'])).toBe('en');
  expect(wantedTag('eo', ['en-GB'])).toBe('eo');
  // What an older version kept, or another hand wrote.
  expect(wantedTag(undefined, ['en-GB'])).toBe('en');
});

test('English asks for no file; another language is fetched once, and the page says which one it is', async () => {
  const get = vi.spyOn(globalThis, 'fetch').mockImplementation(answer({ pages: words('parts-back = Wróć'), core: {} }));
  await takeLanguage();
  expect(get).not.toHaveBeenCalled();
  settings.setLanguage('pl');
  await takeLanguage();
  expect(get).toHaveBeenCalledOnce();
  expect([spokenTag(), document.documentElement.lang, t('parts-back')]).toEqual(['pl', 'pl', 'Wróć']);
});

test('a language that is not there any more gives way to English', async () => {
  vi.spyOn(globalThis, 'fetch').mockImplementation(answer(null, false));
  settings.setLanguage('pl');
  await takeLanguage();
  expect([spokenTag(), document.documentElement.lang, t('parts-back')]).toEqual(['en', 'en', 'Back']);
  expect(await fetchLanguage('pl', answer('<!doctype html>'))).toBeNull();
  expect(await fetchLanguage('pl', () => Promise.reject(new TypeError('no network')))).toBeNull();
  const never = answer({ pages: {}, core: {} });
  expect(await fetchLanguage('../settings', never)).toBeNull();
  expect(never).not.toHaveBeenCalled();
});

test('what a language has no words for is said in English and marked, also where its words ask for too much', () => {
  speak(made('parts-back = Wróć\nplan-left = Zostało { $nobody }'));
  expect(t('parts-back')).toBe('Wróć');
  expect(t('parts-close')).toBe('Close (EN)');
  expect(t('plan-left', { jobs: 1 })).toBe('1 job left (EN)');
  expect(say({ messageId: 'refused-no-such', arguments: [] })).toMatch(/ \(EN\)$/);
  speak(made('parts-back = Wróć', `${SIGNS}in-english = { $text } [ang.]`));
  expect(t('parts-close')).toBe('Close [ang.]');
  // Lists keep the order and the keys of English.
  expect(keys('job-state')).toEqual(['open', 'begun', 'done']);
});

test('a plural is chosen as the language does', () => {
  speak(made('plan-left =\n    { $jobs ->\n        [one] jedna\n        [few] kilka\n       *[other] wiele\n    }'));
  expect([1, 3, 5, 22].map((jobs) => t('plan-left', { jobs }))).toEqual(['jedna', 'kilka', 'wiele', 'kilka']);
});

test('numbers take the signs of the language, and a number is typed with its sign or with a point', () => {
  speak(made(''));
  expect(digits(-1234567.891, 2)).toBe('\u22121.234.567,89');
  expect(amount(2.5, 'hour')).toBe('2,5\u00a0h');
  const typed = new Typed(38.1, 'millimetre', { min: 5, max: 500 });
  expect(typed.text).toBe('38,1');
  for (const key of ['4', '.', '.', '2']) typed.press(key);
  expect([typed.text, typed.value]).toEqual(['4,2', 4.2]);
  typed.typed('7.5');
  expect(typed.value).toBe(7.5);
  speak({ ...made(''), core: words('number-decimal = ٫') });
  typed.typed('7٫5');
  expect(typed.value).toBe(7.5);
});

// What stands in an address: it brings back what was tried, and what nobody could have typed is nothing.
import { beforeEach, expect, test } from 'vitest';
import { route, to } from '../src/app/route.svelte.ts';
import { fromText, toText } from '../src/places/numbers/paint/shared/surfaces.ts';
import { attempt, begin, flagIn, numberIn, numbersIn, textIn, wordIn } from '../src/places/numbers/shared/address.svelte.ts';

const at = (hash: string) => route.replace(hash);
beforeEach(() => at('#/numbers/brakes'));

test('a number is read only where one stands', () => {
  at('#/numbers/brakes?a=12.5&b=&c=%20&d=abc&e=Infinity&f=-3&g=0');
  expect(numbersIn(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'gone'])).toEqual({ a: 12.5, b: null, c: null, d: null, e: null, f: -3, g: 0, gone: null });
});

test('a word is one of those known, a flag is said or not said', () => {
  at('#/numbers/brakes?end=rear&other=toString&tube=false&opposed=yes&empty=');
  expect(wordIn('end', 'end')).toBe('rear');
  expect(wordIn('other', 'end')).toBeNull();
  expect([flagIn('tube'), flagIn('opposed'), flagIn('gone')]).toEqual([false, null, null]);
  expect([textIn('empty'), textIn('gone')]).toEqual(['', null]);
});

test('trying something keeps the rest, trying nothing leaves it out, and beginning anew forgets all of it', () => {
  const before = history.length;
  attempt({ master: 14, opposed: true });
  attempt({ piston: 27, opposed: false });
  expect(route.hash).toBe('#/numbers/brakes?master=14&opposed=false&piston=27');
  attempt({ master: null, gone: null });
  expect([numberIn('master'), numberIn('piston')]).toEqual([null, 27]);
  begin({ end: 'rear' });
  expect(route.hash).toBe('#/numbers/brakes?end=rear');
  begin({});
  expect(route.hash).toBe('#/numbers/brakes');
  // Back leads out of the page, not through each try.
  expect(history.length).toBe(before);
});

test('a mark with odd letters comes back whole, and a broken one does no harm', () => {
  at(to('bike', 'history', 'part', 'a/b ü?&#'));
  expect(route.path).toEqual(['bike', 'history', 'part', 'a/b ü?&#']);
  at('#/plan/job/%E0%A4%A');
  expect(route.path).toEqual(['plan', 'job', '%E0%A4%A']);
  at('#/');
  expect(route.path).toEqual([]);
});

test('surfaces come back as they were measured, and what cannot be read is left out', () => {
  const text = 'shell:480:620:1,shellBoth:900:210:2,rim:460:110:1,tube:30:500:2';
  const surfaces = fromText(text);
  expect(surfaces).toHaveLength(4);
  expect(surfaces[1]).toEqual({ kind: 'shell', lengthMm: 900, girthMm: 210, bothSides: true, count: 2 });
  expect(toText(surfaces)).toBe(text);
  expect(fromText('rim:460:wide:1,ball:1:2:3,tube:30,,shell:1:2:x')).toEqual([]);
  expect([toText([]), fromText(null)]).toEqual([null, []]);
});

// Numbers as they are written on a drawing. Each expected text was worked out by hand.
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { settings } from '../src/app/settings.svelte.ts';
import { amount, asSold, cupful, digits, fromSmallest, handsOn, inSmallest, money, passing, signed } from '../src/show/number.ts';
import { openDesk } from './desk.ts';

beforeAll(() => openDesk());
beforeEach(() => {
  settings.show('millimetre', 'millimetre');
  settings.show('celsius', 'celsius');
});

test('thousands are grouped by a thin space, and a minus is a minus', () => {
  expect(digits(999, 0)).toBe('999');
  expect(digits(1000, 0)).toBe('1\u202f000');
  expect(digits(-1234567.891, 2)).toBe('\u22121\u202f234\u202f567.89');
  expect(digits(0.125, 3)).toBe('0.125');
  expect(digits(Number.NaN, 1)).toBe('–');
  expect(digits(Infinity, 1)).toBe('–');
});

test('what rounds to nothing has no sign', () => {
  expect(digits(-0.04, 1)).toBe('0.0');
  expect(digits(-0.05, 1)).toBe('\u22120.1');
  expect(signed(0.004, 'percent', 2)).toBe('0.00\u00a0%');
  expect(signed(0.04, 'percent', 1)).toBe('0.0\u00a0%');
  expect(signed(0.4, 'percent', 1)).toBe('+0.4\u00a0%');
  expect(signed(-0.4, 'percent', 1)).toBe('\u22120.4\u00a0%');
});

test('a value that is not known is a dash, never a nought', () => {
  expect(amount(null, 'millimetre')).toBe('–');
  expect(amount(undefined, 'millimetre')).toBe('–');
  expect(amount(0, 'millimetre')).toBe('0.0\u00a0mm');
});

test('a quantity is shown in the unit that was chosen, with an offset where there is one', () => {
  expect(amount(25.4, 'millimetre')).toBe('25.4\u00a0mm');
  settings.show('millimetre', 'inch');
  // One inch, and three quarters of one.
  expect(amount(25.4, 'millimetre')).toBe('1.00\u00a0in');
  expect(amount(19.05, 'millimetre', 0)).toBe('0.75\u00a0in');
  settings.show('celsius', 'fahrenheit');
  // The two scales meet at forty below.
  expect(amount(-40, 'celsius')).toBe('\u221240\u00a0°F');
  expect(amount(20, 'celsius')).toBe('68\u00a0°F');
  // A unit that this quantity has not is passed over.
  settings.show('millimetre', 'celsius');
  expect(amount(25.4, 'millimetre')).toBe('25.4\u00a0mm');
});

test('years, counts, angles and hours are written each in its way', () => {
  expect(amount(1974, 'year')).toBe('1974');
  expect(amount(16, 'teeth')).toBe('16\u00a0teeth');
  expect(amount(7.5, 'degree', 1)).toBe('7.5°');
  expect(amount(3, 'hour')).toBe('3\u00a0h');
  expect(amount(2.5, 'hour')).toBe('2.5\u00a0h');
});

test('time of work and time that passes, at the edges of their words', () => {
  expect(handsOn(59.4)).toBe('59\u00a0min');
  expect(handsOn(59.6)).toBe('1\u00a0h');
  expect(handsOn(65)).toBe('1\u00a0h\u00a005');
  expect(passing(0.5)).toBe('30\u00a0min');
  // 59.94 minutes are an hour.
  expect(passing(0.999)).toBe('1\u00a0h');
  expect(passing(9.94)).toBe('9.9\u00a0h');
  expect(passing(31)).toBe('31\u00a0h');
  expect(passing(72)).toBe('3\u00a0days');
  expect(passing(84)).toBe('3.5\u00a0days');
  expect(passing(240)).toBe('10\u00a0days');
});

test('money has the decimals of its currency', () => {
  expect(money(1250, 'EUR')).toBe('€12.50');
  expect(money(1250, 'JPY')).toBe('JP¥1,250');
  expect(money(1250, 'no currency')).toBe('12.50');
});

test('a price that is typed is the price that is shown, whatever the currency', () => {
  expect([inSmallest(12.5, 'EUR'), inSmallest(1250, 'JPY'), inSmallest(12.5, null)]).toEqual([1250, 1250, 1250]);
  expect(money(inSmallest(1250, 'JPY'), 'JPY')).toBe('JP¥1,250');
  // 1.15 × 100 is a hair below 115.
  expect(inSmallest(1.15, 'GBP')).toBe(115);
  expect([fromSmallest(1250, 'EUR'), fromSmallest(1250, 'JPY'), fromSmallest(1250, undefined)]).toEqual([12.5, 1250, 12.5]);
});

test('sizes as they are sold, and volumes over a cup', () => {
  expect([6, 2.5, 0.75, 1.125].map(asSold)).toEqual([0, 1, 2, 2]);
  expect([250, 1000, 1500, 1250].map(cupful)).toEqual(['250\u00a0mL', '1\u00a0L', '1.5\u00a0L', '1.250\u00a0L']);
});

// Days and times on the local clock: here in a zone that is an hour ahead of UTC, from 29 March 2026 on two.
import { expect, test } from 'vitest';
import { START_MS } from '../../../tests/moment.mjs';
import { clockTime, countdown, day, dayMark, dayOf, instantOf, moment, momentMark, weekday } from '../src/show/date.ts';

test('a moment is told on the clock of the place, on both sides of the change', () => {
  expect(moment(Date.UTC(2026, 2, 29, 0, 30))).toBe('Sun 29 Mar, 01:30');
  expect(moment(Date.UTC(2026, 2, 29, 1, 30))).toBe('Sun 29 Mar, 03:30');
  // Half past eleven at night in UTC is the next day here.
  expect(day(Date.UTC(2026, 0, 10, 23, 30))).toBe('Sun 11 Jan');
});

test('another year is named', () => {
  expect(day(START_MS)).toBe('Sat 10 Jan');
  expect(day(Date.UTC(2027, 0, 10))).toBe('10 Jan 2027');
  expect(dayOf('2025-12-31')).toBe('31 Dec 2025');
});

test('what the picker writes is the instant it means, there and back', () => {
  expect(instantOf('2026-01-10T10:00')).toBe(START_MS);
  expect(momentMark(new Date(START_MS))).toBe('2026-01-10T10:00');
  expect(dayMark(new Date(Date.UTC(2026, 0, 9, 23, 0)))).toBe('2026-01-10');
  expect([instantOf(''), instantOf('soon')]).toEqual([null, null]);
});

test('the week begins on Monday, and a minute of the day is a time', () => {
  expect([weekday(1), weekday(7)]).toEqual(['Monday', 'Sunday']);
  expect([clockTime(0), clockTime(1110), clockTime(1439)]).toEqual(['00:00', '18:30', '23:59']);
});

test('a countdown never says that it is over before it is', () => {
  expect([countdown(1), countdown(999), countdown(1001)]).toEqual(['0:01', '0:01', '0:02']);
  expect([countdown(0), countdown(-5000), countdown(3_599_001), countdown(3_661_000)]).toEqual(['0:00', '0:00', '1:00:00', '1:01:01']);
});

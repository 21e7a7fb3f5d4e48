// What a hand types on the pad: how it is read, what is refused, and what comes of it in the other unit.
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { settings } from '../src/app/settings.svelte.ts';
import { Typed } from '../src/parts/fields/NumberPad.svelte.ts';
import { bound, openDesk } from './desk.ts';

beforeAll(() => openDesk());
beforeEach(() => {
  settings.show('millimetre', 'millimetre');
  settings.show('celsius', 'celsius');
});

const length = (value: number | null = null) => new Typed(value, 'millimetre', bound('length', 5, 500));

function read(text: string): number | null {
  const typed = length();
  typed.typed(text);
  return typed.value;
}

test('a comma, a bare point and a real minus are read', () => {
  expect(read('12,5')).toBe(12.5);
  expect(read('.5')).toBe(0.5);
  expect(read('5.')).toBe(5);
  expect(read(' 7 ')).toBe(7);
  expect(read('\u22123')).toBe(-3);
});

test('what is no plain number is no value, never a guess', () => {
  for (const text of ['', '-', '.', '1e3', '1.2.3', '1,2,3', '0x10', 'twelve', '12 mm', 'Infinity', '--1', '+5']) expect(read(text), text).toBeNull();
});

test('the first key replaces what stood there, later ones go on', () => {
  const typed = length(38.1);
  expect(typed.text).toBe('38.1');
  typed.press('4');
  typed.press('.');
  typed.press('.');
  typed.press('2');
  expect(typed.text).toBe('4.2');
  typed.press('erase');
  expect(typed.value).toBe(4);
  typed.press('sign');
  expect(typed.value).toBe(-4);
  typed.press('sign');
  expect(typed.value).toBe(4);
  typed.press('clear');
  expect(typed.value).toBeNull();
});

test('rubbed out at once, all of it goes; the sign keeps what stands there', () => {
  const typed = length(38.1);
  typed.press('erase');
  expect(typed.text).toBe('');
  const turned = length(38.1);
  turned.press('sign');
  expect(turned.value).toBe(-38.1);
});

test('a number has an end', () => {
  const typed = length();
  for (const key of '1234567890123') typed.press(key);
  expect(typed.text).toBe('123456789012');
  typed.typed('9'.repeat(20));
  expect(typed.text).toHaveLength(12);
});

test('outside its range it says so, at the range itself it does not', () => {
  const outside = (text: string) => {
    const typed = length();
    typed.typed(text);
    return typed.outside;
  };
  expect([outside('4.99'), outside('5'), outside('500'), outside('500.01'), outside('')]).toEqual([true, false, false, true, false]);
  expect(length().negative).toBe(false);
  expect(new Typed(null, 'celsius', bound('air', -40, 60)).negative).toBe(true);
});

test('what is typed in the other unit reaches the core in its own, and comes back as it was typed', () => {
  settings.show('millimetre', 'inch');
  const typed = length();
  typed.typed('1.5');
  expect(typed.value).toBe(38.1);
  expect(typed.symbol).toBe('in');
  // 0.7 in is 17.78 mm and not a hair less.
  typed.typed('0.7');
  expect(typed.value).toBe(17.78);
  expect(length(38.1).text).toBe('1.5');
  // Five and five hundred millimetres: 0.19685 and 19.685 in.
  expect(typed.range).toEqual({ from: '0.20', to: '19.69' });
  typed.typed('0.19');
  expect(typed.outside).toBe(true);
});

test('the unit key turns over what stands there, there and back', () => {
  const typed = new Typed(20, 'celsius', bound('air', -40, 60));
  typed.switchUnit();
  expect([typed.text, typed.symbol, typed.value]).toEqual(['68', '°F', 20]);
  expect(typed.range).toEqual({ from: '\u221240', to: '140' });
  typed.switchUnit();
  expect([typed.text, typed.symbol, typed.value]).toEqual(['20', '°C', 20]);
  // The next key begins a new number.
  typed.press('7');
  expect(typed.text).toBe('7');
  // A quantity with one unit has no such key.
  const teeth = new Typed(16, 'teeth', undefined);
  expect(teeth.otherUnit).toBeNull();
  teeth.switchUnit();
  expect(teeth.value).toBe(16);
});

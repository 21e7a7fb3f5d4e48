// The words of what the core says, and what goes into them: quantities, units, days, lengths of time.
import { FluentNumber, FluentType, type FluentFunction, type FluentValue } from '@fluent/bundle';
import type { Unit } from '../door/wire.ts';
import { Catalogue, PlainNumber, type Texts } from './catalogue.ts';
import { shown, signs, trimmed, unitCard, withSymbol, type Decimals } from './numbers.ts';

/** A quantity on its way into a message. */
export class Quantity extends FluentType<number> {
  readonly unit: Unit;

  constructor(value: number, unit: Unit) {
    super(value);
    this.unit = unit;
  }

  text(decimals: Decimals, withUnit: boolean): string {
    const { number, unit, amount } = shown(this.value, this.unit, decimals);
    return withUnit ? withSymbol(number, inWords(unit, amount)) : number;
  }

  override toString(): string {
    return this.text('of unit', true);
  }
}

/** A length of time, in both ways of saying it. */
export class TimeSpan extends FluentType<number> {
  override toString(): string {
    return passingTime(this.value);
  }
}

/** A quantity with so many decimals or as exact as it was given, with its unit or without. */
const quantity =
  (exact: boolean): FluentFunction =>
  ([given], { decimals, unit }) => {
    if (!(given instanceof Quantity)) return '?';
    const fixed = decimals instanceof FluentNumber ? decimals.value : 'of unit';
    return given.text(exact ? 'exact' : fixed, unit !== 'none');
  };

const work: FluentFunction = ([given]): FluentValue => (given instanceof TimeSpan ? workTime(given.value) : '?');

const files = import.meta.glob<Texts>('../../../../fixtures/words/en/core/*.ftl', { eager: true, import: 'default' });
export const core = new Catalogue('core', files, inEnglish, { QUANTITY: quantity(false), EXACT: quantity(true), WORK: work });
signs.decimal = () => core.sign('number-decimal');
signs.group = () => core.sign('number-group');

/** A text that is English among another language, marked as such. */
export function inEnglish(text: string): string {
  return core.sign('in-english', { text });
}

/** The unit in words, where the language says it in words: teeth, links, days. */
export function inWords(unit: Unit, amount: number): string {
  const id = `unit-${unit}`;
  return core.has(id) ? core.format(id, { amount: new PlainNumber(amount) }) : unitCard(unit).symbol;
}

/** How the parts of a list stand together. */
export type ListStyle = 'and' | 'or' | 'comma' | 'sentences' | 'dot' | 'semicolon' | 'plus';

/** A list as the language writes it; what is missing is left out. */
export function listed(items: (string | false | null | undefined)[], style: ListStyle = 'comma'): string {
  const there = items.filter((item) => item !== '').filter((item) => typeof item === 'string');
  const atEnd = style === 'and' || style === 'or';
  const id = (place: number) => (atEnd && place < there.length - 1 ? 'list-comma' : `list-${style}`);
  return there.reduce((before, item, place) => (place === 0 ? item : core.format(id(place), { before, item })), '');
}

const two = (number: number) => String(number).padStart(2, '0');

/** 18:05 from minutes after midnight. */
export const clockTime = (minute: number) => `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;

/** A day: Sat 4 Apr, from its `YYYY-MM-DD`; with the year instead of the day of the week where that is wanted. */
export function dayInWords(mark: string, withYear = false): string {
  const [year = 0, month = 0, date = 0] = mark.split('-').map(Number);
  if (!year || !month || !date) return mark;
  const weekday = new Date(Date.UTC(year, month - 1, date)).getUTCDay() || 7;
  const parts = { weekday: core.format(`weekday-short-${weekday}`), month: core.format(`month-short-${month}`) };
  return core.format(withYear ? 'day-of-year' : 'day', { ...parts, day: String(date), year: String(year) });
}

/** A day in words with its time. */
export const momentInWords = (day: string, minute: number) => core.format('local-time', { day, time: clockTime(minute) });

/** Minutes that pass: 40 min, 1.5 h, 31 h, 5 days. */
export function passingTime(minutes: number): string {
  const hours = minutes / 60;
  const say = (id: string, length: number, decimals: number) => core.format(id, { count: new PlainNumber(length), number: trimmed(length, decimals) });
  if (Math.round(minutes) < 60) return say('duration-minutes', Math.round(minutes), 0);
  if (hours < 72) return say('duration-hours', hours, hours < 9.95 ? 1 : 0);
  return say('duration-days', hours / 24, hours < 239 ? 1 : 0);
}

/** Minutes of work: 45 min, 1 h 30. */
export function workTime(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return core.format('duration-minutes', { number: String(rest) });
  if (rest === 0) return core.format('duration-hours', { number: String(hours) });
  return core.format('work-hours-minutes', { hours: String(hours), minutes: two(rest) });
}

// What the core says comes as the id of a message with its arguments; here it gets its words. The desk puts every answer through
// this, so that the pages see texts.
import { FluentNumber, FluentType, type FluentFunction, type FluentValue } from '@fluent/bundle';
import type { Unit } from '../door/wire.ts';
import { Catalogue, PlainNumber, type Texts } from './catalogue.ts';
import { shown, trimmed, unitCard, withSymbol, type Decimals } from './numbers.ts';

type ListStyle = 'and' | 'or' | 'comma' | 'sentences';

/** A message as it crosses the door (`core/src/message`). */
export interface RawMessage {
  messageId: string;
  arguments: { name: string; value: Argument }[];
}

export type Argument =
  | { kind: 'quantity'; value: number; unit: Unit }
  | { kind: 'count'; count: number }
  | { kind: 'text'; text: string }
  | { kind: 'message'; message: RawMessage }
  | { kind: 'several'; items: RawMessage[]; style: ListStyle }
  | { kind: 'choice'; choice: string }
  | { kind: 'day'; day: string }
  | { kind: 'localTime'; day: string; minute: number }
  | { kind: 'duration'; minutes: number };

/** A quantity on its way into a message. */
class Quantity extends FluentType<number> {
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
class TimeSpan extends FluentType<number> {
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
const catalogue = new Catalogue(files, { QUANTITY: quantity(false), EXACT: quantity(true), WORK: work });

/** The unit in words, where the language says it in words: teeth, links, days. */
function inWords(unit: Unit, amount: number): string {
  const id = `unit-${unit}`;
  return catalogue.has(id) ? catalogue.format(id, { amount: new PlainNumber(amount) }) : unitCard(unit).symbol;
}

function joined(items: string[], style: ListStyle): string {
  const id = (place: number) => {
    if (style === 'sentences') return 'list-sentences';
    return style !== 'comma' && place === items.length - 1 ? `list-${style}` : 'list-comma';
  };
  return items.reduce((before, item, place) => (place === 0 ? item : catalogue.format(id(place), { before, item })), '');
}

/** A day: Sat 4 Apr. */
function day(text: string): string {
  const [year = 0, month = 0, date = 0] = text.split('-').map(Number);
  if (!year || !month || !date) return text;
  const weekday = new Date(Date.UTC(year, month - 1, date)).getUTCDay() || 7;
  const parts = { weekday: catalogue.format(`weekday-short-${weekday}`), month: catalogue.format(`month-short-${month}`) };
  return catalogue.format('day', { ...parts, day: String(date), year: String(year) });
}

const two = (number: number) => String(number).padStart(2, '0');

/** Minutes that pass: 40 min, 1.5 h, 31 h, 5 days. */
export function passingTime(minutes: number): string {
  const hours = minutes / 60;
  const say = (id: string, length: number, decimals: number) => catalogue.format(id, { count: new PlainNumber(length), number: trimmed(length, decimals) });
  if (Math.round(minutes) < 60) return say('duration-minutes', Math.round(minutes), 0);
  if (hours < 72) return say('duration-hours', hours, hours < 9.95 ? 1 : 0);
  return say('duration-days', hours / 24, hours < 239 ? 1 : 0);
}

/** Minutes of work: 45 min, 1 h 30. */
export function workTime(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return catalogue.format('duration-minutes', { number: String(rest) });
  if (rest === 0) return catalogue.format('duration-hours', { number: String(hours) });
  return catalogue.format('work-hours-minutes', { hours: String(hours), minutes: two(rest) });
}

function value(argument: Argument): string | FluentType<unknown> {
  switch (argument.kind) {
    case 'quantity':
      return new Quantity(argument.value, argument.unit);
    case 'count':
      return new PlainNumber(argument.count);
    case 'text':
      return argument.text;
    case 'message':
      return say(argument.message);
    case 'several':
      return joined(argument.items.map(say), argument.style);
    case 'choice':
      return argument.choice;
    case 'day':
      return day(argument.day);
    case 'localTime':
      return catalogue.format('local-time', { day: day(argument.day), time: `${two(Math.floor(argument.minute / 60))}:${two(argument.minute % 60)}` });
    case 'duration':
      return new TimeSpan(argument.minutes);
  }
}

/** A message in words. */
export function say(said: RawMessage): string {
  return catalogue.format(said.messageId, Object.fromEntries(said.arguments.map((argument) => [argument.name, value(argument.value)])));
}

/** The same answer with words in place of its messages. It comes fresh from the door, so it is changed where it stands. */
export function worded(answer: unknown): unknown {
  if (answer === null || typeof answer !== 'object' || ArrayBuffer.isView(answer)) return answer;
  if ('messageId' in answer) return say(answer as RawMessage);
  const fields = answer as Record<string, unknown>;
  for (const [name, field] of Object.entries(fields)) {
    if (field !== null && typeof field === 'object') fields[name] = worded(field);
  }
  return answer;
}

// What the core says comes as the id of a message with its arguments; here it gets its words. The desk puts every answer through
// this, so that the pages see texts.
import { FluentBundle, FluentNumber, FluentType } from '@fluent/bundle';
import type { FluentFunction, FluentResource, FluentValue } from '@fluent/bundle';
import type { Unit } from '../door/wire.ts';
import { shown, trimmed, unitCard, withSymbol, type Decimals } from './numbers.ts';

type Pattern = NonNullable<FluentResource['body'][number]['value']>;
type ListStyle = 'and' | 'or' | 'comma' | 'sentences';

/** A message as it crosses the door (`core/src/message`). */
export interface Said {
  messageId: string;
  arguments: { name: string; value: Argument }[];
}

export type Argument =
  | { kind: 'quantity'; value: number; unit: Unit }
  | { kind: 'count'; count: number }
  | { kind: 'text'; text: string }
  | { kind: 'message'; message: Said }
  | { kind: 'several'; items: Said[]; style: ListStyle }
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
class Span extends FluentType<number> {
  override toString(): string {
    return passing(this.value);
  }
}

/** A count: chooses the plural, and is printed without groups. */
class Count extends FluentNumber {
  override toString(): string {
    return String(this.value);
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

const work: FluentFunction = ([given]): FluentValue => (given instanceof Span ? hands(given.value) : '?');

const files = import.meta.glob<Record<string, Pattern>>('../../../../fixtures/words/en/core/*.ftl', { eager: true, import: 'default' });
const catalogue = Object.assign({}, ...Object.values(files)) as Record<string, Pattern>;
const bundle = new FluentBundle('en', { useIsolating: false, functions: { QUANTITY: quantity(false), EXACT: quantity(true), WORK: work } });
bundle.addResource({ body: Object.entries(catalogue).map(([id, value]) => ({ id, value, attributes: {} })) });

/** A message of the catalogue with what goes into it; its id where there is none, so that it is seen. */
function format(id: string, values: Record<string, string | FluentType<unknown>> = {}): string {
  const pattern = catalogue[id];
  return pattern === undefined ? id : bundle.formatPattern(pattern, values, []);
}

/** The unit in words, where the language says it in words: teeth, links, days. */
function inWords(unit: Unit, amount: number): string {
  const id = `unit-${unit}`;
  return catalogue[id] === undefined ? unitCard(unit).symbol : format(id, { amount: new Count(amount) });
}

function joined(items: string[], style: ListStyle): string {
  const id = (place: number) => {
    if (style === 'sentences') return 'list-sentences';
    return style !== 'comma' && place === items.length - 1 ? `list-${style}` : 'list-comma';
  };
  return items.reduce((before, item, place) => (place === 0 ? item : format(id(place), { before, item })), '');
}

/** A day: Sat 4 Apr. */
function day(text: string): string {
  const [year = 0, month = 0, date = 0] = text.split('-').map(Number);
  if (!year || !month || !date) return text;
  const weekday = new Date(Date.UTC(year, month - 1, date)).getUTCDay() || 7;
  const parts = { weekday: format(`weekday-short-${weekday}`), month: format(`month-short-${month}`) };
  return format('day', { ...parts, day: String(date), year: String(year) });
}

const two = (number: number) => String(number).padStart(2, '0');

/** Time that passes: 40 min, 1.5 h, 31 h, 5 days. */
function passing(minutes: number): string {
  const hours = minutes / 60;
  const say = (id: string, length: number, decimals: number) => format(id, { count: new Count(length), number: trimmed(length, decimals) });
  if (Math.round(minutes) < 60) return say('duration-minutes', Math.round(minutes), 0);
  if (hours < 72) return say('duration-hours', hours, hours < 9.95 ? 1 : 0);
  return say('duration-days', hours / 24, hours < 239 ? 1 : 0);
}

/** Time of work: 45 min, 1 h 30. */
function hands(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return format('duration-minutes', { number: String(rest) });
  if (rest === 0) return format('duration-hours', { number: String(hours) });
  return format('work-hours-minutes', { hours: String(hours), minutes: two(rest) });
}

function value(argument: Argument): string | FluentType<unknown> {
  switch (argument.kind) {
    case 'quantity':
      return new Quantity(argument.value, argument.unit);
    case 'count':
      return new Count(argument.count);
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
      return format('local-time', { day: day(argument.day), time: `${two(Math.floor(argument.minute / 60))}:${two(argument.minute % 60)}` });
    case 'duration':
      return new Span(argument.minutes);
  }
}

/** A message in words. */
export function say(said: Said): string {
  return format(said.messageId, Object.fromEntries(said.arguments.map((argument) => [argument.name, value(argument.value)])));
}

/** The same answer with words in place of its messages. It comes fresh from the door, so it is changed where it stands. */
export function worded(answer: unknown): unknown {
  if (answer === null || typeof answer !== 'object' || ArrayBuffer.isView(answer)) return answer;
  if ('messageId' in answer) return say(answer as Said);
  const fields = answer as Record<string, unknown>;
  for (const [name, field] of Object.entries(fields)) {
    if (field !== null && typeof field === 'object') fields[name] = worded(field);
  }
  return answer;
}

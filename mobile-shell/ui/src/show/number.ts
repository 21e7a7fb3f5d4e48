// Numbers as they are written on a drawing: thousands in groups, a real minus, the unit after a space.
import { settings } from '../app/settings.svelte.ts';
import type { Unit } from '../door/wire.ts';
import { digits, trimmed, unitCard, withSymbol } from '../words/numbers.ts';
import { inWords, passingTime, workTime } from '../words/core.ts';
import { ENGLISH, spokenTag } from '../words/spoken.ts';

export { digits };

/** A value in the unit that this device shows: the number and its symbol. */
export function figure(value: number, unit: Unit, decimals?: number): { number: string; symbol: string } {
  const card = unitCard(unit);
  const shown = settings.shownIn(unit);
  if (shown === unit || card.other?.unit !== shown) {
    const own = decimals ?? card.decimals;
    const write = unit === 'year' ? value.toFixed(0) : unit === 'hour' ? trimmed(value, own) : digits(value, own);
    return { number: write, symbol: inWords(unit, value) };
  }
  const other = unitCard(shown);
  const there = value * card.other.factor + card.other.offset;
  return { number: digits(there, other.decimals), symbol: inWords(shown, there) };
}

/** A value with its unit, in one piece of text. */
export function amount(value: number | null | undefined, unit: Unit, decimals?: number): string {
  if (value === null || value === undefined) return '–';
  const { number, symbol } = figure(value, unit, decimals);
  return withSymbol(number, symbol);
}

/** A change, with its sign always written. */
export function signed(value: number, unit: Unit, decimals?: number): string {
  const text = amount(value, unit, decimals);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

/** Minutes of work as a person says them: 45 min, 1 h 30. */
export const handsOn = workTime;

/** Hours that pass: 40 min, 31 h, 5 days. */
export const passing = (hours: number) => passingTime(hours * 60);

/** English here is as it is written in Britain. */
const locale = () => (spokenTag() === ENGLISH ? 'en-GB' : spokenTag());

/** How the locale writes a currency; nothing where there is no such one. */
function writer(currency: string | null | undefined): Intl.NumberFormat | null {
  return /^[A-Z]{3}$/.test(currency ?? '') ? new Intl.NumberFormat(locale(), { style: 'currency', currency: currency ?? '' }) : null;
}

/** Smallest units in one: a hundred of most currencies, one of the yen. */
const units = (currency: string | null | undefined) => 10 ** (writer(currency)?.resolvedOptions().maximumFractionDigits ?? 2);

/** A price as it is typed, from its smallest unit and back. */
export const fromSmallest = (minor: number, currency: string | null | undefined) => minor / units(currency);
export const inSmallest = (price: number, currency: string | null | undefined) => Math.round(price * units(currency));

/** Money in its smallest unit, as the locale writes the currency. */
export function money(minor: number, currency: string): string {
  return writer(currency)?.format(fromSmallest(minor, currency)) ?? digits(minor / 100, 2);
}

/** Decimals of a size as it is sold: 6, 2.5, 0.75. */
export function asSold(value: number): number {
  return Number.isInteger(value) ? 0 : Number.isInteger(Math.round(value * 1e6) / 1e5) ? 1 : 2;
}

/** A volume as one says it over a cup: 250 mL, 1.5 L. */
export function cupful(ml: number): string {
  return ml >= 1000 ? `${digits(ml / 1000, ml % 1000 === 0 ? 0 : ml % 100 === 0 ? 1 : 3)}\u00a0L` : `${digits(ml, 0)}\u00a0mL`;
}

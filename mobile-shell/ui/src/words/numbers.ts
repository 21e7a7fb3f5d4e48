// Numbers as they are written on a drawing: thin space between thousands, a real minus, the unit after a space that does not break.
// `bindings/words` has the same rules for scripts and files; a thousand cases in `fixtures/words/figures.json` hold both to them.
import cards from '../../../../bindings/generated/units.json';
import type { Unit, UnitCard } from '../door/wire.ts';

const THIN = '\u202f';
const MINUS = '\u2212';
const NO_BREAK = '\u00a0';
/** Most decimals of a number that is shown as exactly as it was given. */
const EXACT = 6;

/** Every unit, as the core declares it. */
export const units = cards as UnitCard[];

const byName = new Map(units.map((card) => [card.unit, card]));

export const unitCard = (unit: Unit): UnitCard => byName.get(unit) ?? { unit, symbol: '', decimals: 2, other: null };

/** What the device prefers. Its settings stand above the words, so they put it in here. */
export const device = { shownIn: (unit: Unit): Unit => unit };

/** A number with so many decimals; all from 1,000 on are grouped. */
export function digits(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  const [whole = '', part] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, THIN);
  const text = part ? `${grouped}.${part}` : grouped;
  // What rounds to nothing has no sign.
  return value < 0 && /[1-9]/.test(text) ? MINUS + text : text;
}

/** A number with at most so many decimals. */
export const trimmed = (value: number, decimals: number) =>
  digits(value, decimals)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');

/** How many decimals a number gets: as its unit shows, without zeros at the end; as many as it has; so many. */
export type Decimals = 'of unit' | 'exact' | number;

function written(value: number, unit: Unit, decimals: Decimals): string {
  // A year is a name, not an amount.
  if (unit === 'year') return value.toFixed(0);
  if (decimals === 'of unit') return trimmed(value, unitCard(unit).decimals);
  return decimals === 'exact' ? trimmed(value, EXACT) : digits(value, decimals);
}

/** A quantity in the unit that this device shows: the number and the unit. Another unit than the core's has its own decimals. */
export function shown(value: number, unit: Unit, decimals: Decimals): { number: string; unit: Unit; amount: number } {
  const { other } = unitCard(unit);
  const wanted = device.shownIn(unit);
  if (wanted === unit || other?.unit !== wanted) return { number: written(value, unit, decimals), unit, amount: value };
  const amount = value * other.factor + other.offset;
  return { number: written(amount, wanted, 'of unit'), unit: wanted, amount };
}

/** The amount with its symbol behind it, never parted by the end of a line. The sign of an angle stands close to its number. */
export function withSymbol(number: string, symbol: string): string {
  if (!symbol) return number;
  return symbol === '°' ? `${number}°` : `${number}${NO_BREAK}${symbol}`;
}

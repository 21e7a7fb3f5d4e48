// Numbers as they are written on a drawing: thousands in groups, a real minus, the unit after a space that does not break. The signs
// before the decimals and between the groups are the language's.
// `bindings/words` has the same rules for scripts and files; a thousand cases in `fixtures/words/figures.json` hold both to them.
import cards from '../../../../bindings/generated/units.json';
import type { Unit, UnitCard } from '../door/wire.ts';

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

/** The signs of the language that is spoken. The words put them in: they know its catalogue. */
export const signs = { decimal: () => '.', group: () => '\u202f' };

/** A number with so many decimals; all from 1,000 on are grouped. */
export function digits(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  return written(value, Math.abs(value).toFixed(decimals));
}

/** A number with at most so many decimals. */
export function trimmed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  const all = Math.abs(value).toFixed(decimals);
  return written(value, all.includes('.') ? all.replace(/\.?0+$/, '') : all);
}

function written(value: number, digits: string): string {
  const [whole = '', part] = digits.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, signs.group());
  const text = part ? `${grouped}${signs.decimal()}${part}` : grouped;
  // What rounds to nothing has no sign.
  return value < 0 && /[1-9]/.test(digits) ? MINUS + text : text;
}

/** How many decimals a number gets: as its unit shows, without zeros at the end; as many as it has; so many. */
export type Decimals = 'of unit' | 'exact' | number;

function inUnit(value: number, unit: Unit, decimals: Decimals): string {
  // A year is a name, not an amount.
  if (unit === 'year') return value.toFixed(0);
  if (decimals === 'of unit') return trimmed(value, unitCard(unit).decimals);
  return decimals === 'exact' ? trimmed(value, EXACT) : digits(value, decimals);
}

/** A quantity in the unit that this device shows: the number and the unit. Another unit than the core's has its own decimals. */
export function shown(value: number, unit: Unit, decimals: Decimals): { number: string; unit: Unit; amount: number } {
  const { other } = unitCard(unit);
  const wanted = device.shownIn(unit);
  if (wanted === unit || other?.unit !== wanted) return { number: inUnit(value, unit, decimals), unit, amount: value };
  const amount = value * other.factor + other.offset;
  return { number: inUnit(amount, wanted, 'of unit'), unit: wanted, amount };
}

/** The amount with its symbol behind it, never parted by the end of a line. The sign of an angle stands close to its number. */
export function withSymbol(number: string, symbol: string): string {
  if (!symbol) return number;
  return symbol === '°' ? `${number}°` : `${number}${NO_BREAK}${symbol}`;
}

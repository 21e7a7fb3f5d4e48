// What the tyre page tries: another size on one wheel, its date code, what was measured.
import { numberIn, numbersIn, textIn, wordIn } from '../shared/address.svelte.ts';
import { amount, digits, signed } from '../../../show/number.ts';
import type { End, TyreAsk, TyreReading, TyreAnswer, Wheel } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { words } from '../../../words/index.ts';

const say = words.tyres;

export const MORE: Entry[] = [
  { field: 'circumferenceMm', label: say.rolled, unit: 'millimetre', decimals: 0, optional: true, bound: 'circumference' },
  { field: 'axleLoadKg', label: say.axleLoad, unit: 'kilogram', decimals: 0, optional: true, bound: 'axleLoad' },
  { field: 'rimWidthInch', label: say.rim, unit: 'inch', decimals: 2, optional: true, bound: 'rimWidth' },
];
const NUMBERS = ['circumferenceMm', 'axleLoadKg', 'rimWidthInch'] as const;
export const FIELDS = [...NUMBERS, 'tyre', 'dateCode'];

export const end = (): End => wordIn('end', words.end) ?? 'rear';

/** What differs from the fitted wheel; nothing when it is looked at as it is. */
export function triedWheel(): Wheel | null {
  const wheel = { tyre: textIn('tyre'), dateCode: textIn('dateCode'), ...numbersIn(NUMBERS) };
  return Object.values(wheel).some((value) => value !== null) ? { ...wheel, tubeSizes: [] } : null;
}

export const tried = (): TyreAsk => ({ end: end(), wheel: triedWheel() });

export const values = (wheel: Wheel | undefined): Record<string, number | null | undefined> =>
  Object.fromEntries(NUMBERS.map((field) => [field, numberIn(field) ?? (field === 'circumferenceMm' && textIn('tyre') ? null : wheel?.[field])]));

/** The tyre that the page is about. */
export const looked = (sheet: TyreAnswer): TyreReading | null | undefined => sheet.proposed ?? sheet.fitted ?? sheet.standard;

const mm = (value: number) => amount(value, 'millimetre', 0);

export function readingRows(tyre: TyreReading): Row[] {
  return [
    { label: say.section, value: tyre.section },
    { label: say.carcass, value: tyre.carcass },
    { label: say.carries, value: tyre.loadKg ? amount(tyre.loadKg, 'kilogram', 0) : say.noMark, after: tyre.loadIndex ? String(tyre.loadIndex) : undefined },
    { label: say.goes, value: tyre.speedKmh ? amount(tyre.speedKmh, 'kilometreHour', 0) : say.noMark, after: tyre.speedSymbol ?? undefined },
    { label: say.turn, value: mm(tyre.circumferenceMm), below: tyre.measured ? say.measured : say.worked },
    { label: say.turns, value: digits(tyre.turnsPerKm, 0) },
    { label: say.newTyre, value: say.range(mm(tyre.newLeastMm), mm(tyre.newMostMm)) },
  ];
}

export function changeRows(sheet: TyreAnswer): Row[] {
  const change = sheet.change;
  if (!change) return [];
  const rows: Row[] = [
    {
      label: say.turn,
      before: mm(change.circumferenceBeforeMm),
      value: mm(change.circumferenceAfterMm),
      after: signed(change.circumferencePercent, 'percent', 1),
    },
    {
      label: say.ride,
      value: signed(change.rideHeightMm, 'millimetre', 0),
      below: say.range(signed(change.rideHeightLeastMm, 'millimetre', 0), signed(change.rideHeightMostMm, 'millimetre', 0)),
    },
  ];
  if (change.speedometerPercent !== null && change.speedometerPercent !== undefined)
    rows.push({ label: say.speedometer, value: signed(change.speedometerPercent, 'percent', 1) });
  return rows;
}

// What the tyre page tries: another size on one wheel, its date code, what was measured.
import { numberIn, numbersIn, textIn, wordIn } from '../shared/address.svelte.ts';
import { amount, digits, signed } from '../../../show/number.ts';
import type { End, TyreAsk, TyreReading, TyreAnswer, Wheel } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { t } from '../../../words/index.ts';

export const MORE: Entry[] = [
  { field: 'circumferenceMm', label: t('tyres-rolled'), unit: 'millimetre', decimals: 0, optional: true, bound: 'circumference' },
  { field: 'axleLoadKg', label: t('tyres-axle-load'), unit: 'kilogram', decimals: 0, optional: true, bound: 'axleLoad' },
  { field: 'rimWidthInch', label: t('tyres-rim'), unit: 'inch', decimals: 2, optional: true, bound: 'rimWidth' },
];
const NUMBERS = ['circumferenceMm', 'axleLoadKg', 'rimWidthInch'] as const;
export const FIELDS = [...NUMBERS, 'tyre', 'dateCode'];

export const end = (): End => wordIn('end', 'end') ?? 'rear';

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
    { label: t('tyres-section'), value: tyre.section },
    { label: t('tyres-carcass'), value: tyre.carcass },
    {
      label: t('tyres-carries'),
      value: tyre.loadKg ? amount(tyre.loadKg, 'kilogram', 0) : t('tyres-no-mark'),
      after: tyre.loadIndex ? String(tyre.loadIndex) : undefined,
    },
    { label: t('tyres-goes'), value: tyre.speedKmh ? amount(tyre.speedKmh, 'kilometreHour', 0) : t('tyres-no-mark'), after: tyre.speedSymbol ?? undefined },
    { label: t('tyres-turn'), value: mm(tyre.circumferenceMm), below: tyre.measured ? t('tyres-measured') : t('tyres-worked') },
    { label: t('tyres-turns'), value: digits(tyre.turnsPerKm, 0) },
    { label: t('tyres-new-tyre'), value: t('parts-between', { least: mm(tyre.newLeastMm), most: mm(tyre.newMostMm) }) },
  ];
}

export function changeRows(sheet: TyreAnswer): Row[] {
  const change = sheet.change;
  if (!change) return [];
  const rows: Row[] = [
    {
      label: t('tyres-turn'),
      before: mm(change.circumferenceBeforeMm),
      value: mm(change.circumferenceAfterMm),
      after: signed(change.circumferencePercent, 'percent', 1),
    },
    {
      label: t('tyres-ride'),
      value: signed(change.rideHeightMm, 'millimetre', 0),
      below: t('parts-between', { least: signed(change.rideHeightLeastMm, 'millimetre', 0), most: signed(change.rideHeightMostMm, 'millimetre', 0) }),
    },
  ];
  if (change.speedometerPercent !== null && change.speedometerPercent !== undefined)
    rows.push({ label: t('tyres-speedometer'), value: signed(change.speedometerPercent, 'percent', 1) });
  return rows;
}

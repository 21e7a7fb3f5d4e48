// What the page on thrust tries: sprockets, an engine, a rider and a road.
import { numbersIn } from '../shared/address.svelte.ts';
import { amount, digits } from '../../../show/number.ts';
import type { BikeAnswer, ThrustAsk, ThrustAnswer } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { t } from '../../../words/index.ts';

export const ROAD: Entry[] = [
  { field: 'loadKg', label: t('thrust-load'), unit: 'kilogram', decimals: 0, optional: true, note: t('thrust-load-note'), bound: 'loadMass' },
  { field: 'dragAreaM2', label: t('thrust-area'), unit: 'squareMetre', decimals: 2, optional: true, note: t('thrust-area-note'), bound: 'dragArea' },
  { field: 'headWindKmh', label: t('thrust-wind'), unit: 'kilometreHour', decimals: 0, optional: true, note: t('thrust-wind-note'), bound: 'headWind' },
  { field: 'gradePercent', label: t('thrust-grade'), unit: 'percent', decimals: 1, optional: true, note: t('thrust-grade-note'), bound: 'grade' },
];
export const ENGINE: Entry[] = [
  { field: 'peakPowerKw', label: t('thrust-peak-power'), unit: 'kilowatt', decimals: 1, optional: true, bound: 'peakPower' },
  { field: 'peakPowerRpm', label: t('thrust-peak-power-rpm'), unit: 'rpm', optional: true, bound: 'revLimit' },
  { field: 'peakTorqueNm', label: t('thrust-peak-torque'), unit: 'newtonMetre', decimals: 1, optional: true, bound: 'peakTorque' },
  { field: 'peakTorqueRpm', label: t('thrust-peak-torque-rpm'), unit: 'rpm', optional: true, bound: 'peakTorqueRpm' },
  {
    field: 'driveEfficiency',
    label: t('thrust-efficiency'),
    unit: 'none',
    decimals: 2,
    optional: true,
    note: t('thrust-efficiency-note'),
    bound: 'driveEfficiency',
  },
];
export const AIR: Entry[] = [
  { field: 'rollingCoefficient', label: t('thrust-rolling'), unit: 'none', decimals: 3, optional: true, note: t('thrust-rolling-note'), bound: 'rolling' },
  { field: 'tyreBar', label: t('thrust-pressure'), unit: 'bar', decimals: 2, optional: true, note: t('thrust-pressure-note'), bound: 'tyrePressure' },
  { field: 'altitudeMetres', label: t('thrust-altitude'), unit: 'metre', decimals: 0, optional: true, bound: 'altitude' },
  { field: 'celsius', label: t('thrust-celsius'), unit: 'celsius', decimals: 0, optional: true, bound: 'temperature' },
];

const TEETH = ['frontTeeth', 'rearTeeth'] as const;
const ON_ROAD = ['loadKg', 'dragAreaM2', 'headWindKmh', 'gradePercent', 'rollingCoefficient', 'tyreBar', 'altitudeMetres', 'celsius'] as const;
const IN_ENGINE = ['peakPowerKw', 'peakPowerRpm', 'peakTorqueNm', 'peakTorqueRpm', 'driveEfficiency'] as const;
const ALL = [...TEETH, ...ON_ROAD, ...IN_ENGINE] as const;
export const FIELDS: string[] = [...ALL];

export const tried = (): ThrustAsk => ({ ...numbersIn(ALL), powerCurve: [], cruiseKmh: [] });
/** Something is tried that is not on the bike. */
export const typed = (): boolean => Object.values(numbersIn(ALL)).some((value) => value !== null);

/** What each field shows: as tried, else as the bike or the road without a word from the rider has it. */
export function values(bike: BikeAnswer | undefined, sheet: ThrustAnswer | undefined): Record<string, number | null | undefined> {
  const { dragAreaM2, driveEfficiency } = bike?.fitted.drive ?? {};
  const { peakPowerKw, peakPowerRpm, peakTorqueNm, peakTorqueRpm } = bike?.identity ?? {};
  const known = {
    dragAreaM2,
    driveEfficiency,
    peakPowerKw,
    peakPowerRpm,
    peakTorqueNm,
    peakTorqueRpm,
    headWindKmh: sheet?.headWindKmh,
    gradePercent: sheet?.gradePercent,
  };
  const now = numbersIn(ALL);
  return { ...known, ...Object.fromEntries(Object.entries(now).filter((entry) => entry[1] !== null)) };
}

/** Top gear against the engine, and what the speed is made of. */
export function lines(sheet: ThrustAnswer): Row[] {
  const rows: Row[] = [];
  const match = sheet.gearing;
  if (match) {
    rows.push({ label: t('thrust-verdict-row'), value: t(`thrust-verdict-${match.verdict}`), mark: match.verdict !== 'suits' });
    if (match.topGearRpm !== null && match.topGearRpm !== undefined)
      rows.push({ label: t('thrust-top-gear'), value: amount(match.topGearRpm, 'rpm'), below: amount(match.topGearKmh, 'kilometreHour', 0) });
  }
  rows.push({
    label: t('thrust-peak'),
    value: amount(sheet.peakKw, 'kilowatt', 1),
    after: amount(sheet.peakRpm, 'rpm'),
    below: t(`thrust-source-${sheet.powerSource}`),
  });
  if (match?.bestKmh !== null && match?.bestKmh !== undefined) {
    const ratio = match.bestFinalRatio;
    rows.push({
      label: t('thrust-best'),
      value: amount(match.bestKmh, 'kilometreHour', 0),
      below: ratio === null || ratio === undefined ? undefined : t('thrust-best-ratio', { ratio: digits(ratio, 2) }),
    });
  }
  if (sheet.top) {
    const held = sheet.top.resistance;
    rows.push({
      label: t('thrust-resistance'),
      value: amount(held.totalNewtons, 'newton', 0),
      below: t('thrust-air', { force: amount(held.airNewtons, 'newton', 0) }),
    });
  }
  rows.push({ label: t('thrust-mass'), value: amount(sheet.massKg, 'kilogram', 0) });
  return rows;
}

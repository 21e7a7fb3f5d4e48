// What the page on thrust tries: sprockets, an engine, a rider and a road.
import { numbersIn } from '../shared/address.svelte.ts';
import { amount, digits } from '../../../show/number.ts';
import type { BikeAnswer, ThrustAsk, ThrustAnswer } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { words } from '../../../words/index.ts';

const say = words.thrust;

export const ROAD: Entry[] = [
  { field: 'loadKg', label: say.load, unit: 'kilogram', decimals: 0, optional: true, note: say.loadNote, bound: 'loadMass' },
  { field: 'dragAreaM2', label: say.area, unit: 'squareMetre', decimals: 2, optional: true, note: say.areaNote, bound: 'dragArea' },
  { field: 'headWindKmh', label: say.wind, unit: 'kilometreHour', decimals: 0, optional: true, note: say.windNote, bound: 'headWind' },
  { field: 'gradePercent', label: say.grade, unit: 'percent', decimals: 1, optional: true, note: say.gradeNote, bound: 'grade' },
];
export const ENGINE: Entry[] = [
  { field: 'peakPowerKw', label: say.peakPower, unit: 'kilowatt', decimals: 1, optional: true, bound: 'peakPower' },
  { field: 'peakPowerRpm', label: say.peakPowerRpm, unit: 'rpm', optional: true, bound: 'revLimit' },
  { field: 'peakTorqueNm', label: say.peakTorque, unit: 'newtonMetre', decimals: 1, optional: true, bound: 'peakTorque' },
  { field: 'peakTorqueRpm', label: say.peakTorqueRpm, unit: 'rpm', optional: true, bound: 'peakTorqueRpm' },
  { field: 'driveEfficiency', label: say.efficiency, unit: 'none', decimals: 2, optional: true, note: say.efficiencyNote, bound: 'driveEfficiency' },
];
export const AIR: Entry[] = [
  { field: 'rollingCoefficient', label: say.rolling, unit: 'none', decimals: 3, optional: true, note: say.rollingNote, bound: 'rolling' },
  { field: 'tyreBar', label: say.pressure, unit: 'bar', decimals: 2, optional: true, note: say.pressureNote, bound: 'tyrePressure' },
  { field: 'altitudeMetres', label: say.altitude, unit: 'metre', decimals: 0, optional: true, bound: 'altitude' },
  { field: 'celsius', label: say.celsius, unit: 'celsius', decimals: 0, optional: true, bound: 'temperature' },
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
    rows.push({ label: say.verdictRow, value: say.verdict[match.verdict], mark: match.verdict !== 'suits' });
    if (match.topGearRpm !== null && match.topGearRpm !== undefined)
      rows.push({ label: say.topGear, value: amount(match.topGearRpm, 'rpm'), below: amount(match.topGearKmh, 'kilometreHour', 0) });
  }
  rows.push({ label: say.peak, value: amount(sheet.peakKw, 'kilowatt', 1), after: amount(sheet.peakRpm, 'rpm'), below: say.source[sheet.powerSource] });
  if (match?.bestKmh !== null && match?.bestKmh !== undefined) {
    const ratio = match.bestFinalRatio;
    rows.push({
      label: say.best,
      value: amount(match.bestKmh, 'kilometreHour', 0),
      below: ratio === null || ratio === undefined ? undefined : say.bestRatio(digits(ratio, 2)),
    });
  }
  if (sheet.top) {
    const held = sheet.top.resistance;
    rows.push({ label: say.resistance, value: amount(held.totalNewtons, 'newton', 0), below: `${say.air} ${amount(held.airNewtons, 'newton', 0)}` });
  }
  rows.push({ label: say.mass, value: amount(sheet.massKg, 'kilogram', 0) });
  return rows;
}

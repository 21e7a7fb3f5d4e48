// What the brake page tries: other parts at one end, a hand, a road.
import { begin, flagIn, numbersIn, wordIn } from '../shared/address.svelte.ts';
import { amount, digits, signed } from '../../../show/number.ts';
import type { Brake, BrakeAsk, BrakeLine, BrakeAnswer, DrumState, End, StoppingAnswer } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { t } from '../../../words/index.ts';

/** The parts that are most often changed. */
export const PARTS: Entry[] = [
  { field: 'masterMm', label: t('brakes-master'), unit: 'millimetre', decimals: 1, bound: 'bore' },
  { field: 'pistonMm', label: t('brakes-piston'), unit: 'millimetre', decimals: 1, bound: 'bore' },
];
export const DISC: Entry[] = [
  { field: 'leverRatio', label: t('brakes-lever'), unit: 'none', decimals: 2, optional: true, bound: 'leverRatio' },
  { field: 'leverNewtons', label: t('brakes-lever-force'), unit: 'newton', decimals: 0, bound: 'leverForce' },
  { field: 'padFriction', label: t('brakes-friction'), unit: 'none', decimals: 2, optional: true, note: t('brakes-friction-note'), bound: 'padFriction' },
  { field: 'rotorMm', label: t('brakes-rotor'), unit: 'millimetre', decimals: 0, optional: true, bound: 'disc' },
  {
    field: 'effectiveRadiusMm',
    label: t('brakes-radius'),
    unit: 'millimetre',
    decimals: 1,
    optional: true,
    note: t('brakes-radius-note'),
    bound: 'effectiveRadius',
  },
  { field: 'padClearanceMm', label: t('brakes-clearance'), unit: 'millimetre', decimals: 2, optional: true, bound: 'padClearance' },
  { field: 'hoseMm', label: t('brakes-hose'), unit: 'millimetre', decimals: 0, optional: true, bound: 'hoseLength' },
  { field: 'hoseSwellMlM', label: t('brakes-hose-swell'), unit: 'millilitre', decimals: 2, optional: true, bound: 'hoseSwell' },
];
export const DRUM: Entry[] = [
  { field: 'camArmMm', label: t('brakes-cam-arm'), unit: 'millimetre', decimals: 0, optional: true, bound: 'camArm' },
  { field: 'camDegrees', label: t('brakes-cam-angle'), unit: 'degree', decimals: 0, optional: true, note: t('brakes-cam-angle-note'), bound: 'camAngle' },
  { field: 'rodTravelMm', label: t('brakes-rod-travel'), unit: 'millimetre', decimals: 1, optional: true, bound: 'rodTravel' },
  { field: 'padFriction', label: t('brakes-friction'), unit: 'none', decimals: 2, optional: true, bound: 'padFriction' },
];
export const ROAD: Entry[] = [
  { field: 'roadSpeedKmh', label: t('brakes-speed'), unit: 'kilometreHour', decimals: 0, bound: 'brakingSpeed' },
  { field: 'reactionSeconds', label: t('brakes-reaction'), unit: 'second', decimals: 1, bound: 'reaction' },
  { field: 'loadKg', label: t('brakes-load'), unit: 'kilogram', decimals: 0, optional: true, note: t('brakes-load-note'), bound: 'loadMass' },
  { field: 'roadFriction', label: t('brakes-grip'), unit: 'none', decimals: 2, optional: true, note: t('brakes-grip-note'), bound: 'roadFriction' },
  { field: 'metres', label: t('brakes-measured'), unit: 'metre', decimals: 1, optional: true, bound: 'stoppingDistance' },
];
export const FLUID: Entry[] = [
  { field: 'fluidYears', label: t('brakes-fluid-years'), unit: 'none', decimals: 1, optional: true, note: t('brakes-fluid-year-unit'), bound: 'fluidYears' },
  { field: 'waterPercent', label: t('brakes-fluid-water'), unit: 'percent', decimals: 1, optional: true, bound: 'waterPercent' },
];

const IN_BRAKE = [
  'masterMm',
  'pistons',
  'pistonMm',
  'rotorMm',
  'leverRatio',
  'padFriction',
  'effectiveRadiusMm',
  'padClearanceMm',
  'hoseMm',
  'hoseSwellMlM',
  'camArmMm',
  'camDegrees',
] as const;
const IN_ASK = ['leverNewtons', 'roadSpeedKmh', 'reactionSeconds', 'loadKg', 'roadFriction', 'metres', 'rodTravelMm', 'fluidYears', 'waterPercent'] as const;

export const end = (): End => wordIn('end', 'end') ?? 'front';

/** The other brake is looked at anew: nothing that was tried here is carried over. */
export const look = (at: End) => begin({ end: at });

/** Only what is tried; the rest is as fitted. */
export function triedBrake(): Brake {
  const fitted: Brake = numbersIn(IN_BRAKE);
  return {
    ...fitted,
    brake: wordIn('brake', 'brake-kind'),
    opposed: flagIn('opposed'),
    twinLeading: flagIn('twinLeading'),
    fluid: wordIn('fluid', 'fluid-grade'),
  };
}

export function tried(): BrakeAsk {
  return { end: end(), brake: triedBrake(), ...numbersIn(IN_ASK), pourIn: wordIn('pourIn', 'fluid-grade') };
}

/** What is tried laid over what is fitted, for the fields. */
export function shown(fitted: Brake, sheet: BrakeAnswer | undefined): Record<string, number | null | undefined> {
  const part = triedBrake();
  const values = Object.fromEntries(IN_BRAKE.map((field) => [field, part[field] ?? fitted[field]]));
  const usual = { leverNewtons: sheet?.proposed?.leverNewtons, roadSpeedKmh: sheet?.stopping.roadSpeedKmh, reactionSeconds: sheet?.stopping.reactionSeconds };
  return { ...values, ...usual, ...known(numbersIn(IN_ASK)) };
}

function known(values: Record<string, number | null>): Record<string, number> {
  return Object.fromEntries(Object.entries(values).filter((entry): entry is [string, number] => entry[1] !== null));
}

/** Something is tried that is not fitted. */
export function differs(fitted: Brake): boolean {
  return Object.entries(triedBrake()).some(([field, value]) => value !== null && value !== fitted[field as keyof Brake]);
}

export const ratio = (value: number): string => t('brakes-to-one', { ratio: digits(value, 2) });

/** A change in per cent as large as it must be, and no finer than a hand feels. */
export const change = (percent: number): string => signed(percent, 'percent', Math.abs(percent) < 9.95 ? 1 : 0);

/** The large answers in a few words, for the line over the pad. */
export function inShort(sheet: BrakeAnswer, drum: boolean): { value: string; meaning: string }[] {
  if (drum) {
    const percent = sheet.drum?.leveragePercent;
    return percent === null || percent === undefined ? [] : [{ value: amount(percent, 'percent', 0), meaning: t('brakes-leverage') }];
  }
  if (!sheet.change) return sheet.proposed ? [{ value: ratio(sheet.proposed.hydraulicRatio), meaning: t('brakes-ratio-short') }] : [];
  return [
    { value: change(sheet.change.effortPercent), meaning: t('brakes-effort-short') },
    { value: change(sheet.change.travelPercent), meaning: t('brakes-travel-short') },
  ];
}

/** From the least to the most; one figure where both are written alike. */
const between = (least: string, most: string) => (least === most ? most : t('parts-between', { least, most }));
const range = (least: number | null | undefined, most: number | null | undefined, write: (value: number) => string): string | null =>
  least === null || least === undefined || most === null || most === undefined ? null : between(write(least), write(most));

/** The ruled lines of a hydraulic brake: as made struck out, as tried after it. */
export function lines(now: BrakeLine, made: BrakeLine | null | undefined): Row[] {
  const rows: Row[] = [];
  const add = (label: string, read: (line: BrakeLine) => string | null, after?: string) => {
    const value = read(now);
    if (value === null) return;
    const before = made ? read(made) : null;
    rows.push({ label, value, before: before && before !== value ? before : undefined, after });
  };
  const of = (value: number | null | undefined, write: (value: number) => string) => (value === null || value === undefined ? null : write(value));
  add(t('brakes-pressure'), (line) => of(line.pressureBar, (bar) => amount(bar, 'bar', 1)));
  add(t('brakes-clamp'), (line) => of(line.clampNewtons, (newtons) => amount(newtons, 'newton', 0)));
  add(t('brakes-torque'), (line) => range(line.torqueLeastNm, line.torqueMostNm, (torque) => amount(torque, 'newtonMetre', 0)));
  add(t('brakes-slows'), (line) => range(line.decelerationLeast, line.decelerationMost, (slows) => amount(slows, 'metreSecondSquared', 1)));
  add(t('brakes-master-travel'), (line) => amount(line.masterTravelMm, 'millimetre', 2));
  add(t('brakes-lever-travel'), (line) => of(line.leverTravelMm, (travel) => amount(travel, 'millimetre', 1)));
  add(t('brakes-hose-travel'), (line) => of(line.hoseTravelMm, (travel) => amount(travel, 'millimetre', 1)));
  return rows;
}

export function drumLines(drum: DrumState): Row[] {
  const rows: Row[] = [];
  const degrees = (value: number | null | undefined) => (value === null || value === undefined ? null : amount(value, 'degree', 0));
  const rest = degrees(drum.restDegrees);
  const applied = degrees(drum.appliedDegrees);
  if (rest) rows.push({ label: t('brakes-rest'), value: rest });
  if (applied) rows.push({ label: t('brakes-applied'), value: applied, mark: drum.judgement === 'outside' });
  const turn = degrees(drum.camTurnDegrees);
  if (turn) rows.push({ label: t('brakes-cam-turn'), value: turn });
  if (drum.camTorqueNm !== null && drum.camTorqueNm !== undefined)
    rows.push({ label: t('brakes-cam-torque'), value: amount(drum.camTorqueNm, 'newtonMetre', 1) });
  rows.push({ label: t('brakes-shoes'), value: between(digits(drum.shoeFactorLeast, 1), digits(drum.shoeFactorMost, 1)) });
  return rows;
}

/** What a measured stop means, where one was entered. */
export function measuredLines(stopping: StoppingAnswer): Row[] {
  const slows = stopping.measuredDeceleration;
  const percent = stopping.measuredPercent;
  if (slows === null || slows === undefined || percent === null || percent === undefined) return [];
  return [
    {
      label: t('brakes-measured-row'),
      value: amount(slows, 'metreSecondSquared', 1),
      below: t('brakes-measured-percent', { percent: amount(percent, 'percent', 0) }),
    },
  ];
}

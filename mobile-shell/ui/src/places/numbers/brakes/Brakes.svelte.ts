// What the brake page tries: other parts at one end, a hand, a road.
import { begin, flagIn, numbersIn, wordIn } from '../shared/address.svelte.ts';
import { amount, digits, signed } from '../../../show/number.ts';
import type { Brake, BrakeAsk, BrakeLine, BrakeAnswer, DrumState, End, StoppingAnswer } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { words } from '../../../words/index.ts';

const say = words.brakes;

/** The parts that are most often changed. */
export const PARTS: Entry[] = [
  { field: 'masterMm', label: say.master, unit: 'millimetre', decimals: 1, bound: 'bore' },
  { field: 'pistonMm', label: say.piston, unit: 'millimetre', decimals: 1, bound: 'bore' },
];
export const DISC: Entry[] = [
  { field: 'leverRatio', label: say.lever, unit: 'none', decimals: 2, optional: true, bound: 'leverRatio' },
  { field: 'leverNewtons', label: say.leverForce, unit: 'newton', decimals: 0, bound: 'leverForce' },
  { field: 'padFriction', label: say.friction, unit: 'none', decimals: 2, optional: true, note: say.frictionNote, bound: 'padFriction' },
  { field: 'rotorMm', label: say.rotor, unit: 'millimetre', decimals: 0, optional: true, bound: 'disc' },
  { field: 'effectiveRadiusMm', label: say.radius, unit: 'millimetre', decimals: 1, optional: true, note: say.radiusNote, bound: 'effectiveRadius' },
  { field: 'padClearanceMm', label: say.clearance, unit: 'millimetre', decimals: 2, optional: true, bound: 'padClearance' },
  { field: 'hoseMm', label: say.hose, unit: 'millimetre', decimals: 0, optional: true, bound: 'hoseLength' },
  { field: 'hoseSwellMlM', label: say.hoseSwell, unit: 'millilitre', decimals: 2, optional: true, bound: 'hoseSwell' },
];
export const DRUM: Entry[] = [
  { field: 'camArmMm', label: say.camArm, unit: 'millimetre', decimals: 0, optional: true, bound: 'camArm' },
  { field: 'camDegrees', label: say.camAngle, unit: 'degree', decimals: 0, optional: true, note: say.camAngleNote, bound: 'camAngle' },
  { field: 'rodTravelMm', label: say.rodTravel, unit: 'millimetre', decimals: 1, optional: true, bound: 'rodTravel' },
  { field: 'padFriction', label: say.friction, unit: 'none', decimals: 2, optional: true, bound: 'padFriction' },
];
export const ROAD: Entry[] = [
  { field: 'roadSpeedKmh', label: say.speed, unit: 'kilometreHour', decimals: 0, bound: 'brakingSpeed' },
  { field: 'reactionSeconds', label: say.reaction, unit: 'second', decimals: 1, bound: 'reaction' },
  { field: 'loadKg', label: say.load, unit: 'kilogram', decimals: 0, optional: true, note: say.loadNote, bound: 'loadMass' },
  { field: 'roadFriction', label: say.grip, unit: 'none', decimals: 2, optional: true, note: say.gripNote, bound: 'roadFriction' },
  { field: 'metres', label: say.measured, unit: 'metre', decimals: 1, optional: true, bound: 'stoppingDistance' },
];
export const FLUID: Entry[] = [
  { field: 'fluidYears', label: say.fluidYears, unit: 'none', decimals: 1, optional: true, note: say.fluidYearUnit, bound: 'fluidYears' },
  { field: 'waterPercent', label: say.fluidWater, unit: 'percent', decimals: 1, optional: true, bound: 'waterPercent' },
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

export const end = (): End => wordIn('end', words.end) ?? 'front';

/** The other brake is looked at anew: nothing that was tried here is carried over. */
export const look = (at: End) => begin({ end: at });

/** Only what is tried; the rest is as fitted. */
export function triedBrake(): Brake {
  const fitted: Brake = numbersIn(IN_BRAKE);
  return {
    ...fitted,
    brake: wordIn('brake', words.brakeKind),
    opposed: flagIn('opposed'),
    twinLeading: flagIn('twinLeading'),
    fluid: wordIn('fluid', words.fluidGrade),
  };
}

export function tried(): BrakeAsk {
  return { end: end(), brake: triedBrake(), ...numbersIn(IN_ASK), pourIn: wordIn('pourIn', words.fluidGrade) };
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

export const ratio = (value: number): string => say.toOne(digits(value, 2));

/** A change in per cent as large as it must be, and no finer than a hand feels. */
export const change = (percent: number): string => signed(percent, 'percent', Math.abs(percent) < 9.95 ? 1 : 0);

/** The large answers in a few words, for the line over the pad. */
export function inShort(sheet: BrakeAnswer, drum: boolean): { value: string; meaning: string }[] {
  if (drum) {
    const percent = sheet.drum?.leveragePercent;
    return percent === null || percent === undefined ? [] : [{ value: amount(percent, 'percent', 0), meaning: say.leverage }];
  }
  if (!sheet.change) return sheet.proposed ? [{ value: ratio(sheet.proposed.hydraulicRatio), meaning: say.ratioShort }] : [];
  return [
    { value: change(sheet.change.effortPercent), meaning: say.effortShort },
    { value: change(sheet.change.travelPercent), meaning: say.travelShort },
  ];
}

const range = (least: number | null | undefined, most: number | null | undefined, write: (value: number) => string): string | null =>
  least === null || least === undefined || most === null || most === undefined ? null : say.fromTo(write(least), write(most));

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
  add(say.pressure, (line) => of(line.pressureBar, (bar) => amount(bar, 'bar', 1)));
  add(say.clamp, (line) => of(line.clampNewtons, (newtons) => amount(newtons, 'newton', 0)));
  add(say.torque, (line) => range(line.torqueLeastNm, line.torqueMostNm, (torque) => amount(torque, 'newtonMetre', 0)));
  add(say.slows, (line) => range(line.decelerationLeast, line.decelerationMost, (slows) => amount(slows, 'metreSecondSquared', 1)));
  add(say.masterTravel, (line) => amount(line.masterTravelMm, 'millimetre', 2));
  add(say.leverTravel, (line) => of(line.leverTravelMm, (travel) => amount(travel, 'millimetre', 1)));
  add(say.hoseTravel, (line) => of(line.hoseTravelMm, (travel) => amount(travel, 'millimetre', 1)));
  return rows;
}

export function drumLines(drum: DrumState): Row[] {
  const rows: Row[] = [];
  const degrees = (value: number | null | undefined) => (value === null || value === undefined ? null : amount(value, 'degree', 0));
  const rest = degrees(drum.restDegrees);
  const applied = degrees(drum.appliedDegrees);
  if (rest) rows.push({ label: say.rest, value: rest });
  if (applied) rows.push({ label: say.applied, value: applied, mark: drum.judgement === 'outside' });
  const turn = degrees(drum.camTurnDegrees);
  if (turn) rows.push({ label: say.camTurn, value: turn });
  if (drum.camTorqueNm !== null && drum.camTorqueNm !== undefined) rows.push({ label: say.camTorque, value: amount(drum.camTorqueNm, 'newtonMetre', 1) });
  rows.push({ label: say.shoes, value: say.fromTo(digits(drum.shoeFactorLeast, 1), digits(drum.shoeFactorMost, 1)) });
  return rows;
}

/** What a measured stop means, where one was entered. */
export function measuredLines(stopping: StoppingAnswer): Row[] {
  const slows = stopping.measuredDeceleration;
  const percent = stopping.measuredPercent;
  if (slows === null || slows === undefined || percent === null || percent === undefined) return [];
  return [{ label: say.measuredRow, value: amount(slows, 'metreSecondSquared', 1), below: say.measuredPercent(amount(percent, 'percent', 0)) }];
}

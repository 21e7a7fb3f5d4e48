// The sections of a spec: which fields each has, how a field is entered and shown, and the command that records it.
import { tables } from '../../../app/asking/tables.svelte.ts';
import type { BoundId, Command, ElectricalSystem, Side, Spec, Unit } from '../../../door/wire.ts';
import { amount, digits } from '../../../show/number.ts';
import { listed } from '../../../words/core.ts';
import { choices, t } from '../../../words/index.ts';
import { blankBrake, blankDrive, blankSupply, blankWheel } from '../../../app/forms/blank.ts';

export type Entry =
  /** `bound` is the id of the accepted range; `decimals` what a workshop writes. */
  | { kind: 'number'; unit: Unit; bound: BoundId; decimals?: number }
  | { kind: 'text'; hint?: string }
  | { kind: 'pick'; options: { value: string; word: string }[] }
  | { kind: 'flag' }
  | { kind: 'gears' }
  | { kind: 'output' }
  | { kind: 'power' };

export interface Field {
  key: string;
  entry: Entry;
  /** Asked only where another field of the record says this. */
  only?: { key: string; says: string };
}

export interface SpecSection {
  id: string;
  title: string;
  fields: Field[];
  read: (spec: Spec) => Record<string, unknown>;
  record: (side: Side, value: never) => Command;
  /** The record's slot in the history: `standard/drive`. */
  kind: string;
  slot: string;
  /** The section of the other end, whose figures may be copied. */
  like?: string;
}

const number = (key: string, unit: Unit, bound: BoundId, decimals?: number): Field => ({ key, entry: { kind: 'number', unit, bound, decimals } });

const wheel: Field[] = [
  { key: 'tyre', entry: { kind: 'text', hint: '3.00-18' } },
  number('circumferenceMm', 'millimetre', 'circumference', 0),
  { key: 'tube', entry: { kind: 'flag' } },
  { key: 'dateCode', entry: { kind: 'text', hint: '3202' } },
  number('axleLoadKg', 'kilogram', 'axleLoad', 0),
  number('rimWidthInch', 'inch', 'rimWidth', 2),
  { key: 'spoked', entry: { kind: 'flag' } },
];
const ofKind = (says: string, fields: Field[]): Field[] => fields.map((field) => ({ ...field, only: { key: 'brake', says } }));
const brake: Field[] = [
  { key: 'brake', entry: { kind: 'pick', options: choices('brake-kind') } },
  ...ofKind('disc', [
    number('rotorMm', 'millimetre', 'disc', 0),
    number('masterMm', 'millimetre', 'bore', 1),
    number('leverRatio', 'none', 'leverRatio', 2),
    number('pistons', 'none', 'pistons', 0),
    number('pistonMm', 'millimetre', 'bore', 1),
    { key: 'opposed', entry: { kind: 'flag' } },
    number('effectiveRadiusMm', 'millimetre', 'effectiveRadius', 1),
    number('padClearanceMm', 'millimetre', 'padClearance', 2),
    number('hoseMm', 'millimetre', 'hoseLength', 0),
    number('hoseSwellMlM', 'millilitre', 'hoseSwell', 2),
    { key: 'fluid', entry: { kind: 'pick', options: choices('fluid-grade') } },
  ]),
  ...ofKind('drum', [
    number('rotorMm', 'millimetre', 'drum', 0),
    number('camArmMm', 'millimetre', 'camArm', 0),
    number('camDegrees', 'degree', 'camAngle', 0),
    { key: 'twinLeading', entry: { kind: 'flag' } },
  ]),
  number('padFriction', 'none', 'padFriction', 2),
];

export const SECTIONS: SpecSection[] = [
  {
    id: 'drive',
    title: t('spec-drive'),
    kind: 'drive',
    slot: 'drive',
    fields: [
      number('frontTeeth', 'teeth', 'frontTeeth'),
      number('rearTeeth', 'teeth', 'rearTeeth'),
      number('primaryRatio', 'none', 'primaryRatio'),
      { key: 'gearRatios', entry: { kind: 'gears' } },
      { key: 'chainSize', entry: { kind: 'pick', options: choices('chain-size') } },
      number('chainLinks', 'links', 'chainLinks'),
      number('centreDistanceMm', 'millimetre', 'centreDistance', 0),
      number('adjusterFromMm', 'millimetre', 'centreDistance', 0),
      number('adjusterToMm', 'millimetre', 'centreDistance', 0),
      { key: 'speedometer', entry: { kind: 'pick', options: choices('speedometer') } },
      number('speedometerOverPercent', 'percent', 'speedometerOver', 1),
      number('revLimitRpm', 'rpm', 'revLimit'),
      number('frontTeethMin', 'teeth', 'frontTeeth'),
      number('frontTeethMax', 'teeth', 'frontTeeth'),
      number('rearTeethMin', 'teeth', 'rearTeeth'),
      number('rearTeethMax', 'teeth', 'rearTeeth'),
      { key: 'frontSprocketSize', entry: { kind: 'pick', options: choices('chain-size') } },
      { key: 'rearSprocketSize', entry: { kind: 'pick', options: choices('chain-size') } },
      { key: 'chainKind', entry: { kind: 'pick', options: choices('chain-kind') } },
      { key: 'chainJoint', entry: { kind: 'pick', options: choices('chain-joint') } },
      number('chainWearLimitPercent', 'percent', 'chainWearLimit', 1),
      number('chainSlackFromMm', 'millimetre', 'chainSlack', 0),
      number('chainSlackToMm', 'millimetre', 'chainSlack', 0),
      { key: 'powerCurve', entry: { kind: 'power' } },
      number('dragAreaM2', 'squareMetre', 'dragArea', 2),
      number('driveEfficiency', 'none', 'driveEfficiency', 2),
    ],
    read: (spec) => ({ ...blankDrive(), ...spec.drive }),
    record: (side, drive) => ({ kind: 'recordDrive', side, drive }),
  },
  {
    id: 'front-wheel',
    title: t('spec-front-wheel'),
    kind: 'wheel',
    slot: 'front',
    fields: wheel,
    read: (spec) => ({ ...blankWheel(), ...spec.frontWheel }),
    record: (side, value) => ({ kind: 'recordWheel', side, end: 'front', wheel: value }),
  },
  {
    id: 'rear-wheel',
    like: 'front-wheel',
    title: t('spec-rear-wheel'),
    kind: 'wheel',
    slot: 'rear',
    fields: wheel,
    read: (spec) => ({ ...blankWheel(), ...spec.rearWheel }),
    record: (side, value) => ({ kind: 'recordWheel', side, end: 'rear', wheel: value }),
  },
  {
    id: 'supply',
    title: t('spec-supply'),
    kind: 'supply',
    slot: 'supply',
    fields: [
      { key: 'system', entry: { kind: 'pick', options: choices('electrical-system') } },
      number('systemVolts', 'volt', 'systemVolts', 0),
      number('chargingVolts', 'volt', 'chargingVolts', 1),
      number('batteryAh', 'ampereHour', 'batteryAh', 0),
      number('ratedHours', 'hour', 'ratedHours', 0),
      number('peukert', 'none', 'peukert', 2),
      { key: 'ignition', entry: { kind: 'pick', options: choices('ignition-kind') } },
      number('idleRpm', 'rpm', 'engineSpeed'),
      { key: 'output', entry: { kind: 'output' } },
    ],
    read: (spec) => ({ ...blankSupply(), ...spec.supply }),
    record: (side, supply) => ({ kind: 'recordSupply', side, supply }),
  },
  {
    id: 'front-brake',
    title: t('spec-front-brake'),
    kind: 'brake',
    slot: 'front',
    fields: brake,
    read: (spec) => ({ ...blankBrake(), ...spec.frontBrake }),
    record: (side, value) => ({ kind: 'recordBrake', side, end: 'front', brake: value }),
  },
  {
    id: 'rear-brake',
    like: 'front-brake',
    title: t('spec-rear-brake'),
    kind: 'brake',
    slot: 'rear',
    fields: brake,
    read: (spec) => ({ ...blankBrake(), ...spec.rearBrake }),
    record: (side, value) => ({ kind: 'recordBrake', side, end: 'rear', brake: value }),
  },
  {
    id: 'indication',
    title: t('spec-indication'),
    kind: 'indication',
    slot: 'indication',
    fields: [
      { key: 'flasher', entry: { kind: 'pick', options: choices('flasher-kind') } },
      number('flasherWatts', 'watt', 'flasherWatts', 0),
      number('flashesMinute', 'flashesMinute', 'flashRate', 0),
      { key: 'pilot', entry: { kind: 'pick', options: choices('pilot-fitting') } },
      number('resistorOhms', 'ohm', 'loadResistor', 1),
      number('resistorsPerSide', 'none', 'resistors', 0),
    ],
    read: (spec) => ({ ...spec.indication }),
    record: (side, indication) => ({ kind: 'recordIndication', side, indication }),
  },
];

const isSaid = (value: unknown) => value !== null && value !== undefined && !(Array.isArray(value) && value.length === 0);

/** The values that say something. */
export const known = (values: Record<string, unknown>) => Object.fromEntries(Object.entries(values).filter(([, value]) => isSaid(value)));

/** What is asked of a record: what it can have as far as it is known, and whatever was entered before. */
export function fieldsOf(section: SpecSection, values: Record<string, unknown>): Field[] {
  // What an electrical system is not asked for, the core says.
  const lacks = section.id === 'supply' ? (tables.system(values.system as ElectricalSystem)?.lacks ?? []) : [];
  const asked = section.fields.filter(({ key, only }) => (!only || values[only.key] === only.says) && !lacks.includes(key));
  const keys = new Set(asked.map((field) => field.key));
  const entered = section.fields.filter((field) => !keys.has(field.key) && isSaid(values[field.key]));
  return [...asked, ...entered.filter((field, at) => entered.findIndex((each) => each.key === field.key) === at)];
}

export function label(section: SpecSection, field: Field): string {
  return tables.field(section.kind, field.key);
}

/** A value as it is shown; empty when it is not known. */
export function shown(field: Field, value: unknown): string {
  if (value === null || value === undefined || value === '') return '';
  const entry = field.entry;
  if (entry.kind === 'number') return amount(Number(value), entry.unit, Number.isInteger(value) ? 0 : entry.decimals);
  const plain = typeof value === 'string' ? value : JSON.stringify(value);
  if (entry.kind === 'pick') return entry.options.find(({ value }) => value === plain)?.word ?? plain;
  if (entry.kind === 'flag') return value ? t('parts-yes') : t('parts-no');
  if (entry.kind === 'gears') return listed((value as number[]).map((ratio) => digits(ratio, 3)));
  if (entry.kind === 'output')
    return listed(
      (value as { rpm: number; watts: number }[]).map((point) => t('spec-at-speed', { amount: amount(point.watts, 'watt'), speed: amount(point.rpm, 'rpm') })),
    );
  if (entry.kind === 'power')
    return listed(
      (value as { rpm: number; kw: number }[]).map((point) => t('spec-at-speed', { amount: amount(point.kw, 'kilowatt', 1), speed: amount(point.rpm, 'rpm') })),
    );
  return plain;
}

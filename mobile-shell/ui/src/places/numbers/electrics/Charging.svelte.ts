// What the charging page asks: readings of a meter, gravities of the cells.
import { numberIn, numbersIn } from '../shared/address.svelte.ts';
import { amount, digits } from '../../../show/number.ts';
import type { ChargingAsk, ChargingAnswer, TestLine } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { t } from '../../../words/index.ts';

const READINGS: Entry[] = [
  { field: 'restedVolts', label: t('charging-rested-volts'), unit: 'volt', decimals: 2, optional: true, bound: 'restedVolts' },
  { field: 'idleVolts', label: t('charging-idle-volts'), unit: 'volt', decimals: 2, optional: true, bound: 'idleVolts' },
  { field: 'fastVolts', label: t('charging-fast-volts'), unit: 'volt', decimals: 2, optional: true, bound: 'fastVolts' },
  { field: 'drainMilliamperes', label: t('charging-drain'), unit: 'milliampere', decimals: 1, optional: true, bound: 'drain' },
];
/** Without a battery there is nothing at rest and nothing that drains. */
export const readings = (battery: boolean): Entry[] => READINGS.filter(({ field }) => battery || field === 'idleVolts' || field === 'fastVolts');
export const MORE: Entry[] = [
  { field: 'acidCelsius', label: t('charging-acid'), unit: 'celsius', decimals: 0, optional: true, bound: 'temperature' },
  { field: 'chargerAmperes', label: t('charging-charger'), unit: 'ampere', decimals: 1, optional: true, bound: 'charger' },
];
/** One field for each cell. */
export const cells = (count: number): Entry[] =>
  Array.from({ length: count }, (_, at) => ({
    field: `gravity${at + 1}`,
    label: t('charging-gravity', { cell: at + 1 }),
    unit: 'none' as const,
    decimals: 3,
    optional: true,
    bound: 'gravity' as const,
  }));

const CELLS = [1, 2, 3, 4, 5, 6].map((cell) => `gravity${cell}`);
const NUMBERS = ['restedVolts', 'idleVolts', 'fastVolts', 'drainMilliamperes', 'acidCelsius', 'chargerAmperes'] as const;
export const FIELDS = [...NUMBERS, ...CELLS, 'gravity', 'celsius'];

export const values = (): Record<string, number | null> => numbersIn([...NUMBERS, ...CELLS]);

export const tried = (): ChargingAsk => ({ ...numbersIn(NUMBERS), gravities: CELLS.map(numberIn).filter((each) => each !== null) });

export const unitOf = (line: TestLine) => (line.test === 'drain' ? ('milliampere' as const) : ('volt' as const));

export function limits(line: TestLine): string {
  const write = (value: number | null | undefined) =>
    value === null || value === undefined ? null : amount(value, unitOf(line), line.test === 'drain' ? 1 : 2);
  return t('charging-limits', { from: write(line.from), to: write(line.to) });
}

export function lines(sheet: ChargingAnswer): Row[] {
  const rows: Row[] = [];
  const add = (label: string, value: number | null | undefined, write: (value: number) => string) => {
    if (value !== null && value !== undefined) rows.push({ label, value: write(value) });
  };
  add(t('charging-charge'), sheet.chargeByVolts, (value) => amount(value, 'percent', 0));
  add(t('charging-charge-gravity'), sheet.chargeByGravity, (value) => amount(value, 'percent', 0));
  add(t('charging-spread'), sheet.gravitySpread, (value) => digits(value, 3));
  add(t('charging-flat'), sheet.daysToFlat, (value) => amount(value, 'day', 0));
  add(t('charging-recharge'), sheet.rechargeHours, (value) => amount(value, 'hour', 1));
  return rows;
}

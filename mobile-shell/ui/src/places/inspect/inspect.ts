// Order and grouping of the walk-through; the verdicts are the core's.
import type { InspectionAnswer, ItemVerdict, Limit, Unit } from '../../door/wire.ts';
import { amount } from '../../show/number.ts';
import { t } from '../../words/index.ts';

export interface Area {
  name: string;
  items: ItemVerdict[];
  known: number;
}

/** The item is asked of this machine. */
export function asked(item: ItemVerdict): boolean {
  return item.verdict !== 'doesNotApply';
}

/** Items by area, in the order of the walk-through. */
export function areas(sheet: InspectionAnswer): Area[] {
  const found = new Map<string, ItemVerdict[]>();
  for (const item of sheet.items) found.set(item.item.area, [...(found.get(item.item.area) ?? []), item]);
  return [...found].map(([name, items]) => ({ name, items, known: items.filter((item) => item.verdict !== 'unknown').length }));
}

/** The first item nobody knows about. */
export function firstOpen(sheet: InspectionAnswer): ItemVerdict | undefined {
  return sheet.items.find((item) => item.verdict === 'unknown');
}

/** A limit in words. */
export function limitWords(limit: Limit, unit: Unit): string {
  const write = (value: number) => amount(value, unit, Number.isInteger(value) ? 0 : undefined);
  const { min, max } = limit;
  if (min !== null && min !== undefined && max !== null && max !== undefined) return t('parts-between', { least: write(min), most: write(max) });
  if (min !== null && min !== undefined) return t('inspect-limit-from', { low: write(min) });
  if (max !== null && max !== undefined) return t('inspect-limit-to', { high: write(max) });
  return '';
}

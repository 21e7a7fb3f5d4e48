// Consumers and fillings as rows.
import type { Consumer, Spec } from '../../../door/wire.ts';
import { amount } from '../../../show/number.ts';
import { listed } from '../../../words/core.ts';
import { t } from '../../../words/index.ts';

export type SlotKind = 'consumer' | 'fluid';

export interface SlotRow {
  id: string;
  title: string;
  more: string;
  value: string;
}

function howMany({ role, count, watts }: Consumer): string {
  const power = amount(watts, 'watt', Number.isInteger(watts) ? 0 : 1);
  return role?.startsWith('indicators') ? t('load-a-side', { count, watts: power }) : t('load-each', { count, watts: power });
}

export function slotsOf(spec: Spec, kind: SlotKind): SlotRow[] {
  if (kind === 'fluid') {
    return spec.fluids.map(({ id, fluid }) => ({
      id,
      title: fluid.name,
      more: fluid.grade ?? '',
      value: fluid.litres ? amount(fluid.litres, 'litre') : '',
    }));
  }
  return spec.consumers.map(({ id, consumer }) => ({
    id,
    title: consumer.name,
    more: listed([consumer.source && t(`light-source-${consumer.source}`), consumer.used && t(`use-${consumer.used}`)], 'dot'),
    value: howMany(consumer),
  }));
}

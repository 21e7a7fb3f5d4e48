// Consumers and fillings as rows.
import type { Spec } from '../../../door/wire.ts';
import { howMany, kindAndUse } from '../../../show/consumer.ts';
import { amount } from '../../../show/number.ts';

export type SlotKind = 'consumer' | 'fluid';

export interface SlotRow {
  id: string;
  title: string;
  more: string;
  value: string;
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
    more: kindAndUse(consumer),
    value: howMany(consumer),
  }));
}

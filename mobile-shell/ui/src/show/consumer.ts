// A consumer as people write it.
import type { Consumer } from '../door/wire.ts';
import { listed } from '../words/core.ts';
import { t } from '../words/index.ts';
import { amount } from './number.ts';

/** What the catalogue words by side. */
const BY_SIDE = ['indicators', 'indicatorsFront', 'indicatorsRear'] as const;

/** How many there are and what each draws. */
export function howMany({ role, count, watts }: Consumer): string {
  return t('load-each', { role: BY_SIDE.find((each) => each === role) ?? 'other', count, watts: amount(watts, 'watt', Number.isInteger(watts) ? 0 : 1) });
}

/** What it is by kind, and when it draws. */
export const kindAndUse = ({ source, used }: Consumer): string => listed([source && t(`light-source-${source}`), used && t(`use-${used}`)], 'dot');

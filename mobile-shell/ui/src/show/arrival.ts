// When a part comes, as people say it.
import { dayOf } from './date.ts';
import type { Arrival } from '../door/wire.ts';
import { t } from '../words/index.ts';

/** The likely day and the safe one; nothing where nobody knows. */
export function comes(arrival: Arrival | null | undefined): string {
  if (!arrival) return '';
  const likely = dayOf(arrival.likely);
  if (!arrival.safe || arrival.safe === arrival.likely) return t('arrival-on', { likely });
  const days = { likely, safe: dayOf(arrival.safe) };
  return arrival.ifOrderedToday ? t('arrival-if-ordered', days) : t('arrival-between', days);
}

// How the windows of a paint job are said, coat by coat.
import { day, moment } from '../../../../show/date.ts';
import { amount } from '../../../../show/number.ts';
import type { OnHold, PaintNeed, ProcessAnswer, StepAnswer } from '../../../../door/wire.ts';
import type { Row } from '../../../../parts/answers/row.ts';
import { listed } from '../../../../words/core.ts';
import { t } from '../../../../words/index.ts';

export interface TimeLine {
  text: string;
  bad?: boolean;
}

/** When a coat went on, or its window on the clock. */
export function timesOf(step: StepAnswer, { state, against }: ProcessAnswer): TimeLine[] {
  if (step.laidMs) return [{ text: t('coats-on', { moment: moment(step.laidMs) }) }];
  const from = step.fromMs ? moment(step.fromMs) : null;
  const until = step.untilMs ? moment(step.untilMs) : null;
  if (!step.next) return from ? [{ text: t('coats-foreseen-from', { moment: from }) }] : [];
  if (state === 'sandFirst') return [{ text: until ? t('coats-missed-at', { moment: until }) : t('coats-missed'), bad: true }];
  const now = against.length > 0 ? { text: t('coats-not-in-this-air'), bad: true } : { text: t('coats-now') };
  if (state === 'ready' || state === 'sanded') return [now];
  const begins = state === 'open' ? now : { text: from ? t('coats-from', { moment: from }) : t('coats-not-in-sight') };
  return [begins, ...(until ? [{ text: t('coats-until', { moment: until }) }] : [])];
}

/** The cell of the title block: the day on which all of it is cured. */
export const cellsOf = (sheet: ProcessAnswer): { label: string; value: string }[] => [
  { label: t('coats-all-cured'), value: sheet.curedMs ? day(sheet.curedMs) : t('coats-not-in-sight') },
];

/** What must wait, each until its end. */
export const holdRows = (holds: OnHold[]): Row[] => holds.map((hold) => ({ label: hold.text, value: hold.untilMs ? moment(hold.untilMs) : t('coats-no-end') }));

export function paintRows(needs: PaintNeed[]): Row[] {
  const ml = (value: number) => amount(value, 'millilitre', 0);
  return needs.map((need) => ({
    label: need.product,
    value: need.leastMl === need.mostMl ? ml(need.mostMl) : t('parts-between', { least: ml(need.leastMl), most: ml(need.mostMl) }),
    below: listed([t('coats-paint-of', { coats: need.coats }), need.cans ? t('coats-cans', { cans: need.cans }) : ''], 'dot'),
  }));
}

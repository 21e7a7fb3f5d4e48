// How the windows of a paint job are said, coat by coat.
import { day, moment } from '../../../../show/date.ts';
import { amount } from '../../../../show/number.ts';
import type { OnHold, PaintNeed, ProcessAnswer, StepAnswer } from '../../../../door/wire.ts';
import type { Row } from '../../../../parts/answers/row.ts';
import { words } from '../../../../words/index.ts';

const say = words.coats;

export interface TimeLine {
  text: string;
  bad?: boolean;
}

/** When a coat went on, or its window on the clock. */
export function timesOf(step: StepAnswer, { state, against }: ProcessAnswer): TimeLine[] {
  if (step.laidMs) return [{ text: say.on(moment(step.laidMs)) }];
  const from = step.fromMs ? moment(step.fromMs) : null;
  const until = step.untilMs ? moment(step.untilMs) : null;
  if (!step.next) return from ? [{ text: say.foreseenFrom(from) }] : [];
  if (state === 'sandFirst') return [{ text: until ? say.missedAt(until) : say.missed, bad: true }];
  const now = against.length > 0 ? { text: say.notInThisAir, bad: true } : { text: say.now };
  if (state === 'ready' || state === 'sanded') return [now];
  const begins = state === 'open' ? now : { text: from ? say.from(from) : say.notInSight };
  return [begins, ...(until ? [{ text: say.until(until) }] : [])];
}

/** The cell of the title block: the day on which all of it is cured. */
export const cellsOf = (sheet: ProcessAnswer): { label: string; value: string }[] => [
  { label: say.allCured, value: sheet.curedMs ? day(sheet.curedMs) : say.notInSight },
];

/** What must wait, each until its end. */
export const holdRows = (holds: OnHold[]): Row[] => holds.map((hold) => ({ label: hold.text, value: hold.untilMs ? moment(hold.untilMs) : say.noEnd }));

export function paintRows(needs: PaintNeed[]): Row[] {
  const ml = (value: number) => amount(value, 'millilitre', 0);
  return needs.map((need) => ({
    label: need.product,
    value: need.leastMl === need.mostMl ? ml(need.mostMl) : words.threads.range(ml(need.leastMl), ml(need.mostMl)),
    below: [say.paintOf(need.coats), need.cans ? say.cans(need.cans) : ''].filter(Boolean).join(' · '),
  }));
}

// What the gearing page tries: teeth and speed, kept in the address so that Back and a shared link bring them again.
import { route } from '../../../app/route.svelte.ts';
import { amount, digits, figure, signed } from '../../../show/number.ts';
import type { ChainFit, GearingAnswer, GearTrain, SpeedometerShift } from '../../../door/wire.ts';
import type { Try } from '../../../app/asking/together.svelte.ts';
import type { Row } from '../../../parts/answers/row.ts';
import { words } from '../../../words/index.ts';

export interface GearingTry {
  frontTeeth: number | null;
  rearTeeth: number | null;
  roadSpeedKmh: number | null;
}

function number(name: string): number | null {
  const text = route.query.get(name);
  const value = text === null ? NaN : Number(text);
  return Number.isFinite(value) ? value : null;
}

export function tried(): GearingTry {
  return { frontTeeth: number('front'), rearTeeth: number('rear'), roadSpeedKmh: number('speed') };
}

export function attempt(change: Partial<GearingTry>, sheet: GearingAnswer | undefined) {
  const now = { ...tried(), ...change };
  const front = now.frontTeeth ?? sheet?.proposed.frontTeeth;
  const rear = now.rearTeeth ?? sheet?.proposed.rearTeeth;
  const query = new URLSearchParams();
  if (front !== undefined) query.set('front', String(front));
  if (rear !== undefined) query.set('rear', String(rear));
  if (now.roadSpeedKmh !== null) query.set('speed', String(now.roadSpeedKmh));
  route.replace(`#/numbers/gearing?${query}`);
}

/** The large answer: the change of engine speed, or the ratio alone when there is no standard to compare with. */
export function headline(sheet: GearingAnswer): { value: string; meaning: string } {
  const change = sheet.engineSpeedChangePercent;
  if (change === null || change === undefined) return { value: digits(sheet.proposed.finalRatio, 3), meaning: words.gearing.noStandard };
  if (Math.abs(change) < 0.05) return { value: signed(0, 'percent', 1), meaning: words.gearing.equal };
  return { value: signed(change, 'percent', 1), meaning: change < 0 ? words.gearing.slower : words.gearing.faster };
}

function axle(chain: ChainFit): string {
  const shift = chain.axleShiftMm;
  if (Math.abs(shift) < 0.5) return words.gearing.stays;
  const distance = amount(Math.abs(shift), 'millimetre', 0);
  return shift > 0 ? words.gearing.back(distance) : words.gearing.forward(distance);
}

function reads(shift: SpeedometerShift): string {
  const percent = amount(Math.abs(shift.shiftPercent), 'percent', 1);
  if (Math.abs(shift.shiftPercent) < 0.05) return words.gearing.readsSame;
  return shift.shiftPercent < 0 ? words.gearing.readsLow(percent) : words.gearing.readsHigh(percent);
}

/** The ruled lines under the picture. */
export function lines(sheet: GearingAnswer): Row[] {
  const rows: Row[] = [];
  const top = sheet.proposed.gears.at(-1);
  const topBefore = sheet.standard?.gears.at(-1);
  if (top) {
    const value = amount(top.rpmAtRoadSpeed, 'rpm');
    const before = topBefore ? amount(topBefore.rpmAtRoadSpeed, 'rpm') : undefined;
    rows.push({
      label: words.gearing.rpmAt(amount(sheet.roadSpeedKmh, 'kilometreHour'), top.gear),
      before: before === value ? undefined : before,
      value,
    });
  }
  if (sheet.chain) {
    rows.push({ label: words.gearing.chain(sheet.chain.size), value: words.gearing.links(sheet.chain.links), after: axle(sheet.chain) });
    if (sheet.chain.insideAdjuster === false) {
      rows.push({ label: words.gearing.adjuster, value: words.gearing.outsideAdjuster, mark: true });
    } else if (sheet.chain.travelUsedPercent !== null && sheet.chain.travelUsedPercent !== undefined) {
      rows.push({ label: words.gearing.adjuster, value: amount(sheet.chain.travelUsedPercent, 'percent', 0) });
    }
  }
  if (sheet.speedometer) {
    rows.push({ label: words.gearing.speedometer, value: reads(sheet.speedometer), mark: sheet.speedometer.farOff });
    rows.push({
      label: words.gearing.showsAt(amount(80, 'kilometreHour')),
      value: amount(sheet.speedometer.shownAt80Kmh, 'kilometreHour'),
      below: words.gearing.allowed(
        figure(sheet.speedometer.allowedFromAt80Kmh, 'kilometreHour').number,
        amount(sheet.speedometer.allowedToAt80Kmh, 'kilometreHour'),
      ),
    });
  }
  rows.push({
    label: words.gearing.circumference,
    value: amount(sheet.proposed.circumferenceMm, 'millimetre', 0),
    after: sheet.proposed.circumferenceMeasured ? words.gearing.measured : words.gearing.fromSize,
  });
  return rows;
}

export function pair(train: GearTrain | null | undefined): string {
  return train ? `${train.frontTeeth} / ${train.rearTeeth}` : '–';
}

/** Other sprockets as a try on the bike, from whichever page they were chosen. */
export function sprocketTry(frontTeeth: number, rearTeeth: number, chainLinks: number | null = null): Try {
  return {
    key: 'sprockets',
    name: words.gearing.tryName(frontTeeth, rearTeeth),
    proposals: [{ kind: 'sprockets', frontTeeth, rearTeeth, chainLinks }],
    fit: [{ kind: 'fitSprockets', frontTeeth, rearTeeth, chainLinks }],
  };
}

// What the gearing page tries: teeth and speed, kept in the address so that Back and a shared link bring them again.
import { route } from '../../../app/route.svelte.ts';
import { amount, digits, figure, signed } from '../../../show/number.ts';
import type { ChainFit, GearingAnswer, GearTrain, SpeedometerShift } from '../../../door/wire.ts';
import type { Try } from '../../../app/asking/together.svelte.ts';
import type { Row } from '../../../parts/answers/row.ts';
import { t } from '../../../words/index.ts';

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
  if (change === null || change === undefined) return { value: digits(sheet.proposed.finalRatio, 3), meaning: t('gearing-no-standard') };
  if (Math.abs(change) < 0.05) return { value: signed(0, 'percent', 1), meaning: t('gearing-equal') };
  return { value: signed(change, 'percent', 1), meaning: change < 0 ? t('gearing-slower') : t('gearing-faster') };
}

function axle(chain: ChainFit): string {
  const shift = chain.axleShiftMm;
  if (Math.abs(shift) < 0.5) return t('gearing-stays');
  const distance = amount(Math.abs(shift), 'millimetre', 0);
  return shift > 0 ? t('gearing-back', { distance }) : t('gearing-forward', { distance });
}

function reads(shift: SpeedometerShift): string {
  const percent = amount(Math.abs(shift.shiftPercent), 'percent', 1);
  if (Math.abs(shift.shiftPercent) < 0.05) return t('gearing-reads-same');
  return shift.shiftPercent < 0 ? t('gearing-reads-low', { percent }) : t('gearing-reads-high', { percent });
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
      label: t('gearing-rpm-at', { speed: amount(sheet.roadSpeedKmh, 'kilometreHour'), gear: top.gear }),
      before: before === value ? undefined : before,
      value,
    });
  }
  if (sheet.chain) {
    rows.push({ label: t('gearing-chain', { size: sheet.chain.size }), value: t('gearing-links', { links: sheet.chain.links }), after: axle(sheet.chain) });
    if (sheet.chain.insideAdjuster === false) {
      rows.push({ label: t('gearing-adjuster'), value: t('gearing-outside-adjuster'), mark: true });
    } else if (sheet.chain.travelUsedPercent !== null && sheet.chain.travelUsedPercent !== undefined) {
      rows.push({ label: t('gearing-adjuster'), value: amount(sheet.chain.travelUsedPercent, 'percent', 0) });
    }
  }
  if (sheet.speedometer) {
    rows.push({ label: t('gearing-speedometer'), value: reads(sheet.speedometer), mark: sheet.speedometer.farOff });
    rows.push({
      label: t('gearing-shows-at', { speed: amount(80, 'kilometreHour') }),
      value: amount(sheet.speedometer.shownAt80Kmh, 'kilometreHour'),
      below: t('gearing-allowed', {
        from: figure(sheet.speedometer.allowedFromAt80Kmh, 'kilometreHour').number,
        to: amount(sheet.speedometer.allowedToAt80Kmh, 'kilometreHour'),
      }),
    });
  }
  rows.push({
    label: t('gearing-circumference'),
    value: amount(sheet.proposed.circumferenceMm, 'millimetre', 0),
    after: sheet.proposed.circumferenceMeasured ? t('gearing-measured') : t('gearing-from-size'),
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
    name: t('gearing-try-name', { front: frontTeeth, rear: rearTeeth }),
    proposals: [{ kind: 'sprockets', frontTeeth, rearTeeth, chainLinks }],
    fit: [{ kind: 'fitSprockets', frontTeeth, rearTeeth, chainLinks }],
  };
}

// What the thread page tries: a measured screw, its class, where it goes.
import { numberIn, numbersIn, textIn, wordIn } from '../shared/address.svelte.ts';
import { amount, figure, signed } from '../../../show/number.ts';
import type { EngagementAdvice, FastenerAsk, FastenerAnswer, ThreadMatch, TorqueBand } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { listed } from '../../../words/core.ts';
import { t } from '../../../words/index.ts';

export type Way = 'pitch' | 'inch' | 'count';

export const DIAMETER: Entry[] = [
  { field: 'diameterMm', label: t('threads-diameter'), unit: 'millimetre', decimals: 2, note: t('threads-diameter-note'), bound: 'threadDiameter' },
];
export const PITCH: Record<Way, Entry[]> = {
  pitch: [{ field: 'pitchMm', label: t('threads-pitch'), unit: 'millimetre', decimals: 2, bound: 'threadPitch' }],
  inch: [{ field: 'turnsPerInch', label: t('threads-turns-per-inch'), unit: 'turnsInch', decimals: 1, bound: 'turnsInch' }],
  count: [
    { field: 'turns', label: t('threads-turns'), unit: 'none', decimals: 1, bound: 'threadTurns' },
    { field: 'overMm', label: t('threads-over'), unit: 'millimetre', decimals: 2, bound: 'overLength' },
  ],
};
export const SEAT: Entry[] = [
  { field: 'bearingMm', label: t('threads-seat'), unit: 'millimetre', decimals: 1, optional: true, note: t('threads-seat-note'), bound: 'seatDiameter' },
  { field: 'holeMm', label: t('threads-hole'), unit: 'millimetre', decimals: 1, optional: true, note: t('threads-hole-note'), bound: 'holeDiameter' },
];
export const DEPTH: Entry[] = [
  { field: 'engagementMm', label: t('threads-engaged'), unit: 'millimetre', decimals: 1, optional: true, bound: 'engagement' },
  { field: 'shearMpa', label: t('threads-shear'), unit: 'megapascal', decimals: 0, optional: true, bound: 'shearStrength' },
];
/** As they stand on a head; the core reads them. */
export const CLASSES = ['4.6', '4.8', '5.6', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9'].map((value) => ({ value, word: value }));

const MEASURED = ['diameterMm', 'pitchMm', 'turnsPerInch', 'turns', 'overMm'] as const;
const MORE = ['bearingMm', 'holeMm', 'engagementMm', 'shearMpa', 'torqueNm'] as const;
export const FIELDS = [...MEASURED, ...MORE, 'source', 'propertyClass', 'thread'];

export const way = (): Way => wordIn('way', 'threads-ways') ?? 'pitch';

export const values = (): Record<string, number | null> => numbersIn([...MEASURED, ...MORE]);

/** What is asked; nothing before a diameter and a pitch are there. */
export function tried(): FastenerAsk | null {
  const by = way();
  const pitch = numbersIn(PITCH[by].map((entry) => entry.field));
  if (numberIn('diameterMm') === null || Object.values(pitch).includes(null)) return null;
  const torqueNm = numberIn('torqueNm');
  return {
    diameterMm: numberIn('diameterMm'),
    ...pitch,
    ...numbersIn(['bearingMm', 'holeMm', 'engagementMm', 'shearMpa']),
    thread: textIn('thread'),
    propertyClass: textIn('propertyClass'),
    lubrication: wordIn('lubrication', 'lubrication'),
    tappedInto: wordIn('tappedInto', 'tapped-into'),
    place: wordIn('place', 'screw-place'),
    maker: torqueNm === null ? null : { torqueNm, source: textIn('source') ?? '' },
  };
}

/** How far the measured screw lies off a thread of the tables. */
export function off(thread: ThreadMatch): string {
  const below = thread.belowNominalMm;
  const size = amount(Math.abs(below), 'millimetre', 2);
  const under = Math.abs(below) < 0.005 ? t('threads-exact') : below > 0 ? t('threads-under', { size }) : t('threads-oversize', { size });
  return t('threads-fits-more', { off: signed(thread.pitchOffPercent, 'percent', 1), below: under });
}

export const describe = (thread: ThreadMatch): string =>
  listed([thread.familyWords, t('threads-flanks', { degrees: amount(thread.flankDegrees, 'degree', 0) })]);

const kilo = (newtons: number): string => amount(newtons, 'newton', 0);

export function strengthLines(sheet: FastenerAnswer): Row[] {
  const strength = sheet.strength;
  if (!strength) return [];
  const rows: Row[] = [
    { label: t('threads-proof'), value: kilo(strength.proofNewtons) },
    { label: t('threads-breaks'), value: kilo(strength.tensileNewtons) },
    { label: t('threads-area'), value: amount(strength.stressAreaMm2, 'squareMillimetre', 1) },
  ];
  const band = sheet.torque;
  if (band) {
    rows.unshift({ label: t('threads-preload'), value: t('parts-between', { least: kilo(band.most.preloadNewtons), most: kilo(band.least.preloadNewtons) }) });
    if (band.makerPreloadLeast && band.makerPreloadMost)
      rows.unshift({
        label: t('threads-maker-preload'),
        value: t('parts-between', { least: kilo(band.makerPreloadLeast), most: kilo(band.makerPreloadMost) }),
      });
  }
  return rows;
}

/** The large answer of the torque. */
export function torqueAnswer(band: TorqueBand, sheet: FastenerAnswer): { value: string; unit: string; meaning: string } {
  const write = (torque: number) => figure(torque, 'newtonMetre', 1);
  const unit = write(1).symbol;
  if (band.maker) return { value: write(band.maker.torqueNm).number, unit, meaning: t('threads-maker-wins', { source: band.maker.source }) };
  const bearer = { name: sheet.thread?.name ?? '', cls: sheet.strength?.propertyClass ?? '' };
  const value = `${write(band.least.torqueNm).number} – ${write(band.most.torqueNm).number}`;
  return { value, unit, meaning: t('threads-torque-for', { ...bearer, torque: amount(band.least.torqueNm, 'newtonMetre', 1) }) };
}

export function depthLines(advice: EngagementAdvice): Row[] {
  const mm = (value: number) => amount(value, 'millimetre', 1);
  const rows: Row[] = [{ label: t('threads-needed'), value: t('parts-between', { least: mm(advice.leastMm), most: mm(advice.mostMm) }) }];
  if (advice.screwBreaksFirstMm) rows.push({ label: t('threads-breaks-first'), value: mm(advice.screwBreaksFirstMm) });
  if (advice.engagedMm && advice.engagedMm < advice.leastMm) rows.push({ label: t('threads-too-little'), value: mm(advice.engagedMm), mark: true });
  return rows;
}

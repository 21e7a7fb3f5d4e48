// What the thread page tries: a measured screw, its class, where it goes.
import { numberIn, numbersIn, textIn, wordIn } from '../shared/address.svelte.ts';
import { amount, figure, signed } from '../../../show/number.ts';
import type { EngagementAdvice, FastenerAsk, FastenerAnswer, ThreadMatch, TorqueBand } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { words } from '../../../words/index.ts';

const say = words.threads;

export type Way = 'pitch' | 'inch' | 'count';

export const DIAMETER: Entry[] = [
  { field: 'diameterMm', label: say.diameter, unit: 'millimetre', decimals: 2, note: say.diameterNote, bound: 'threadDiameter' },
];
export const PITCH: Record<Way, Entry[]> = {
  pitch: [{ field: 'pitchMm', label: say.pitch, unit: 'millimetre', decimals: 2, bound: 'threadPitch' }],
  inch: [{ field: 'turnsPerInch', label: say.turnsPerInch, unit: 'turnsInch', decimals: 1, bound: 'turnsInch' }],
  count: [
    { field: 'turns', label: say.turns, unit: 'none', decimals: 1, bound: 'threadTurns' },
    { field: 'overMm', label: say.over, unit: 'millimetre', decimals: 2, bound: 'overLength' },
  ],
};
export const SEAT: Entry[] = [
  { field: 'bearingMm', label: say.seat, unit: 'millimetre', decimals: 1, optional: true, note: say.seatNote, bound: 'seatDiameter' },
  { field: 'holeMm', label: say.hole, unit: 'millimetre', decimals: 1, optional: true, note: say.holeNote, bound: 'holeDiameter' },
];
export const DEPTH: Entry[] = [
  { field: 'engagementMm', label: say.engaged, unit: 'millimetre', decimals: 1, optional: true, bound: 'engagement' },
  { field: 'shearMpa', label: say.shear, unit: 'megapascal', decimals: 0, optional: true, bound: 'shearStrength' },
];
/** As they stand on a head; the core reads them. */
export const CLASSES = ['4.6', '4.8', '5.6', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9'].map((value) => ({ value, word: value }));

const MEASURED = ['diameterMm', 'pitchMm', 'turnsPerInch', 'turns', 'overMm'] as const;
const MORE = ['bearingMm', 'holeMm', 'engagementMm', 'shearMpa', 'torqueNm'] as const;
export const FIELDS = [...MEASURED, ...MORE, 'source', 'propertyClass', 'thread'];

export const way = (): Way => wordIn('way', PITCH) ?? 'pitch';

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
    lubrication: wordIn('lubrication', words.lubrication),
    tappedInto: wordIn('tappedInto', words.tappedInto),
    place: wordIn('place', words.screwPlace),
    maker: torqueNm === null ? null : { torqueNm, source: textIn('source') ?? '' },
  };
}

/** How far the measured screw lies off a thread of the tables. */
export function off(thread: ThreadMatch): string {
  const below = thread.belowNominalMm;
  const size = amount(Math.abs(below), 'millimetre', 2);
  const under = Math.abs(below) < 0.005 ? say.exact : below > 0 ? say.under(size) : say.oversize(size);
  return say.fitsMore(signed(thread.pitchOffPercent, 'percent', 1), under);
}

export const describe = (thread: ThreadMatch): string => [thread.familyWords, say.flanks(amount(thread.flankDegrees, 'degree', 0))].join(', ');

const kilo = (newtons: number): string => amount(newtons, 'newton', 0);

export function strengthLines(sheet: FastenerAnswer): Row[] {
  const strength = sheet.strength;
  if (!strength) return [];
  const rows: Row[] = [
    { label: say.proof, value: kilo(strength.proofNewtons) },
    { label: say.breaks, value: kilo(strength.tensileNewtons) },
    { label: say.area, value: amount(strength.stressAreaMm2, 'squareMillimetre', 1) },
  ];
  const band = sheet.torque;
  if (band) {
    rows.unshift({ label: say.preload, value: say.range(kilo(band.most.preloadNewtons), kilo(band.least.preloadNewtons)) });
    if (band.makerPreloadLeast && band.makerPreloadMost)
      rows.unshift({ label: say.makerPreload, value: say.range(kilo(band.makerPreloadLeast), kilo(band.makerPreloadMost)) });
  }
  return rows;
}

/** The large answer of the torque. */
export function torqueAnswer(band: TorqueBand, sheet: FastenerAnswer): { value: string; unit: string; meaning: string } {
  const write = (torque: number) => figure(torque, 'newtonMetre', 1);
  const unit = write(1).symbol;
  if (band.maker) return { value: write(band.maker.torqueNm).number, unit, meaning: say.makerWins(band.maker.source) };
  const bears = say.torqueFor(sheet.thread?.name ?? '', sheet.strength?.propertyClass ?? '');
  const value = `${write(band.least.torqueNm).number} – ${write(band.most.torqueNm).number}`;
  return { value, unit, meaning: `${bears}; ${say.torqueSafe(amount(band.least.torqueNm, 'newtonMetre', 1))}` };
}

export function depthLines(advice: EngagementAdvice): Row[] {
  const mm = (value: number) => amount(value, 'millimetre', 1);
  const rows: Row[] = [{ label: say.needed, value: say.range(mm(advice.leastMm), mm(advice.mostMm)) }];
  if (advice.screwBreaksFirstMm) rows.push({ label: say.breaksFirst, value: mm(advice.screwBreaksFirstMm) });
  if (advice.engagedMm && advice.engagedMm < advice.leastMm) rows.push({ label: say.tooLittle, value: mm(advice.engagedMm), mark: true });
  return rows;
}

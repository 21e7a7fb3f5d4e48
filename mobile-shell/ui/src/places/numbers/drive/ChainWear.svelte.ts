// What the page on chain wear tries: a measured length, the slack round the chain, the limits of the manual.
import { attempt, numberIn, numbersIn, textIn, wordIn } from '../shared/address.svelte.ts';
import { amount } from '../../../show/number.ts';
import type { ChainWearAsk, ChainWearAnswer, Drive, TightSpot, WearMark } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { t } from '../../../words/index.ts';

export const PITCHES: Entry = {
  field: 'pitches',
  label: t('chain-wear-pitches'),
  unit: 'none',
  decimals: 0,
  note: t('chain-wear-pitches-note'),
  bound: 'pitches',
};
export const measured = (newMm: number | undefined): Entry => ({
  field: 'measuredMm',
  label: t('chain-wear-measured'),
  unit: 'millimetre',
  decimals: 1,
  optional: true,
  bound: 'measuredChain',
  note: newMm === undefined ? undefined : t('chain-wear-measured-note', { mm: amount(newMm, 'millimetre', 1) }),
});
export const LIMIT: Entry = {
  field: 'chainWearLimitPercent',
  label: t('chain-wear-limit'),
  unit: 'percent',
  decimals: 1,
  optional: true,
  bound: 'chainWearLimit',
};
export const RANGE: Entry[] = [
  { field: 'chainSlackFromMm', label: t('chain-wear-from'), unit: 'millimetre', decimals: 0, optional: true, bound: 'chainSlack' },
  { field: 'chainSlackToMm', label: t('chain-wear-to'), unit: 'millimetre', decimals: 0, optional: true, bound: 'chainSlack' },
];
const OF_BIKE = ['chainWearLimitPercent', 'chainSlackFromMm', 'chainSlackToMm'] as const;
export const FIELDS = ['chainSize', 'pitches', 'measuredMm', 'slackMm', ...OF_BIKE];
/** As many as the core takes. */
export const MOST_READINGS = 60;

export function readings(): number[] {
  return (textIn('slackMm') ?? '')
    .split(',')
    .filter((text) => text.trim() !== '')
    .map(Number)
    .filter(Number.isFinite);
}

/** Writes a reading down, changes it, or takes it away. */
export function setReading(at: number, mm: number | null) {
  const now = readings();
  if (mm === null) now.splice(at, 1);
  else now[at] = mm;
  attempt({ slackMm: now.length > 0 ? now.join(',') : null });
}

export function tried(): ChainWearAsk {
  return { chainSize: wordIn('chainSize', 'chain-size'), ...numbersIn(['pitches', 'measuredMm']), slackMm: readings(), ...numbersIn(OF_BIKE) };
}

/** Something was typed that is not on the bike. */
export const typed = (): boolean => FIELDS.some((field) => textIn(field) !== null);

export function values(drive: Drive | undefined, sheet: ChainWearAnswer | undefined): Record<string, number | null | undefined> {
  const ofBike = Object.fromEntries(OF_BIKE.map((field) => [field, numberIn(field) ?? drive?.[field]]));
  return { ...ofBike, pitches: numberIn('pitches') ?? sheet?.pitches, measuredMm: numberIn('measuredMm') };
}

export const percent = (value: number) => amount(value, 'percent', 2);
const mm = (value: number | null | undefined, decimals = 0) => amount(value, 'millimetre', decimals);

/** How far a limit still is, in words. */
export function left(mark: WearMark): string {
  const away = mark.leftMm;
  if (away === null || away === undefined) return '';
  return away > 0 ? t('chain-wear-left', { mm: mm(away, 1) }) : t('chain-wear-passed', { mm: mm(-away, 1) });
}

export function slackLines(spot: TightSpot): Row[] {
  const rows: Row[] = [
    { label: t('chain-wear-tightest'), value: mm(spot.tightestMm) },
    { label: t('chain-wear-slackest'), value: mm(spot.slackestMm) },
  ];
  if (spot.spreadMm !== null && spot.spreadMm !== undefined) rows.push({ label: t('chain-wear-spread'), value: mm(spot.spreadMm) });
  rows.push({
    label: t('chain-wear-slack-verdict'),
    value: t(`chain-wear-slack-judgement-${spot.judgement}`),
    below: spot.why,
    mark: spot.judgement === 'outside',
  });
  return rows;
}

// What the page on choosing sprockets asks, and how its list is sorted and written. What is wanted stands in the address.
import { attempt, numberIn, numbersIn, textIn, wordIn } from '../shared/address.svelte.ts';
import { amount, digits, signed } from '../../../show/number.ts';
import type { Judgement, SprocketChoiceAsk, SprocketChoiceAnswer, SprocketGoal, SprocketPair } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { t, type Key } from '../../../words/index.ts';

export type Goal = Key<'sprockets-goals'>;
export type Order = Key<'sprockets-orders'>;
export type Shown = Key<'sprockets-shows'>;

export const SPEED: Entry = { field: 'roadSpeedKmh', label: t('sprockets-speed'), unit: 'kilometreHour', decimals: 0, bound: 'roadSpeed' };
export const COMPARED: Entry = { ...SPEED, label: t('sprockets-compared') };
export const RPM: Entry = { field: 'engineRpm', label: t('sprockets-rpm'), unit: 'rpm', bound: 'engineSpeed' };
export const TALLER: Entry = {
  field: 'tallerPercent',
  label: t('sprockets-taller'),
  unit: 'percent',
  decimals: 1,
  note: t('sprockets-taller-note'),
  bound: 'taller',
};

export const goal = (): Goal => wordIn('goal', 'sprockets-goals') ?? 'none';
export const order = (): Order => wordIn('order', 'sprockets-orders') ?? 'best';
export const shown = (): Shown => wordIn('shown', 'sprockets-shows') ?? 'fits';
export const values = (): Record<string, number | null> => numbersIn(['roadSpeedKmh', 'engineRpm', 'tallerPercent']);

/** What is wanted as the door takes it; nothing while a number of it is missing. */
function wanted(): SprocketGoal | null {
  const { roadSpeedKmh, engineRpm, tallerPercent } = numbersIn(['roadSpeedKmh', 'engineRpm', 'tallerPercent']);
  const kind = goal();
  if (kind === 'speedometer') return { kind };
  if (kind === 'taller' && tallerPercent !== null) return { kind, tallerPercent };
  if (kind === 'speedAtRpm' && roadSpeedKmh !== null && engineRpm !== null) return { kind, roadSpeedKmh, engineRpm, gear: numberIn('gear') };
  return null;
}

/** A goal is chosen but its numbers are not there yet. */
export const unsaid = (): boolean => goal() !== 'none' && wanted() === null;

export function sizes(field: 'frontSizes' | 'rearSizes'): number[] {
  return (textIn(field) ?? '')
    .split(',')
    .map(Number)
    .filter((teeth) => teeth > 0);
}
export const pickSizes = (field: 'frontSizes' | 'rearSizes', picked: number[]) =>
  attempt({ [field]: picked.length > 0 ? [...picked].sort((a, b) => a - b).join(',') : null });

export function asked(): SprocketChoiceAsk {
  const speed = numberIn('roadSpeedKmh');
  return { goal: wanted(), frontSizes: sizes('frontSizes'), rearSizes: sizes('rearSizes'), roadSpeedKmh: speed, most: null };
}

export const teeth = (from: number, to: number) =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => ({ value: String(from + at), word: String(from + at) }));

/** Distance from the goal, or from what is fitted where nothing is wanted. */
const away = (pair: SprocketPair) => pair.offGoalPercent ?? pair.speedChangePercent;
const BY: Record<Exclude<Order, 'best'>, (pair: SprocketPair) => number> = {
  goal: (pair) => Math.abs(away(pair)),
  ratio: (pair) => -pair.finalRatio,
  room: (pair) => -(pair.chain?.travelLeftMm ?? -Infinity),
  hunting: (pair) => -((pair.hunting?.frontTurns ?? 0) + (pair.hunting?.rearTurns ?? 0)),
};

/** The pairs in the order that is asked for; the core's own order decides between equals. */
export function pairsOf(sheet: SprocketChoiceAnswer): SprocketPair[] {
  const pairs = shown() === 'all' ? sheet.pairs : sheet.pairs.filter((pair) => pair.judgement !== 'outside');
  const by = order();
  if (by === 'best') return pairs;
  const key = BY[by];
  return [...pairs].sort((a, b) => key(a) - key(b) || 0);
}

export const MARK: Record<Judgement, string> = { fine: '●', open: '○', outside: '▲' };
export const name = (pair: { frontTeeth: number; rearTeeth: number }) => `${pair.frontTeeth} / ${pair.rearTeeth}`;
export const off = (pair: SprocketPair): string =>
  pair.offGoalPercent === null || pair.offGoalPercent === undefined
    ? t('sprockets-against', { percent: signed(pair.speedChangePercent, 'percent', 1) })
    : t('sprockets-off', { percent: signed(pair.offGoalPercent, 'percent', 1) });

/** Where the speedometer stands with a pair: a mark and words. */
export function speedometer(pair: SprocketPair): { mark: string; word: string; long: string } | null {
  if (!pair.speedometer) return null;
  const inside = pair.speedometer.inBand;
  if (inside === true) return { mark: MARK.fine, word: t('sprockets-speed-in'), long: t('sprockets-in-band') };
  if (inside === false) return { mark: MARK.outside, word: t('sprockets-speed-out'), long: t('sprockets-out-band') };
  return { mark: MARK.open, word: t('sprockets-speed-open'), long: t('sprockets-open-band') };
}

/** The small lines of a row: what follows from the pair. */
export function inShort(pair: SprocketPair): string[] {
  const parts = [t('sprockets-ratio-is', { ratio: digits(pair.finalRatio, 3) })];
  if (pair.offGoalPercent !== null && pair.offGoalPercent !== undefined)
    parts.push(t('sprockets-against', { percent: signed(pair.speedChangePercent, 'percent', 1) }));
  if (pair.chain) parts.push(t('sprockets-links', { links: pair.chain.links, stays: pair.chainStays ?? null }));
  const left = pair.chain?.travelLeftMm;
  if (left !== null && left !== undefined && pair.judgement === 'fine') parts.push(t('sprockets-room', { left: amount(left, 'millimetre', 0) }));
  if (pair.hunting) parts.push(t('sprockets-meets', { turns: pair.hunting.frontTurns }));
  return parts;
}

/** Everything about a pair, for its sheet. */
export function lines(pair: SprocketPair, roadSpeedKmh: number): Row[] {
  const rows: Row[] = [{ label: t('sprockets-ratio'), value: digits(pair.finalRatio, 3) }];
  const add = (label: string, value: string | null, more: Partial<Row> = {}) => value !== null && rows.push({ label, value, ...more });
  const known = (value: number | null | undefined, write: (value: number) => string) => (value === null || value === undefined ? null : write(value));
  const percent = (value: number) => signed(value, 'percent', 1);
  const speed = (value: number) => amount(value, 'kilometreHour', 0);
  const mm = (value: number) => amount(value, 'millimetre', 1);
  add(t('sprockets-off-goal'), known(pair.offGoalPercent, percent));
  add(t('sprockets-speed-change'), percent(pair.speedChangePercent));
  add(t('sprockets-rpm-change'), percent(pair.rpmChangePercent));
  add(t('sprockets-kmh-at-goal', { rpm: amount(numberIn('engineRpm'), 'rpm') }), known(pair.kmhAtGoalRpm, speed));
  add(
    t('sprockets-rpm-at', { speed: speed(roadSpeedKmh) }),
    known(pair.rpmAtRoadSpeed, (rpm) => amount(rpm, 'rpm')),
  );
  add(t('sprockets-kmh-at-limit'), known(pair.kmhAtLimit, speed));
  if (pair.chain) {
    const stays = pair.chainStays;
    add(t('gearing-chain', { size: pair.chain.size }), t('gearing-links', { links: pair.chain.links }), {
      below: stays === null || stays === undefined ? undefined : stays ? t('sprockets-stays') : t('sprockets-other'),
    });
    if (pair.chain.insideAdjuster === false) add(t('sprockets-axle'), t('sprockets-axle-outside'), { mark: true });
    else {
      add(t('sprockets-axle'), known(pair.chain.travelUsedMm, mm));
      add(t('sprockets-travel-left'), known(pair.chain.travelLeftMm, mm));
    }
  }
  if (pair.hunting)
    add(t('sprockets-hunting'), t('sprockets-hunting-front', { turns: pair.hunting.frontTurns }), {
      below: t('sprockets-hunting-rear', { turns: pair.hunting.rearTurns }),
    });
  const reads = speedometer(pair);
  if (pair.speedometer && reads)
    add(t('sprockets-speedometer', { speed: speed(80) }), amount(pair.speedometer.shownAt80Kmh, 'kilometreHour', 1), {
      below: reads.long,
      mark: pair.speedometer.inBand === false,
    });
  return rows;
}

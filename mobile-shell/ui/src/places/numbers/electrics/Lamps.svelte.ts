// What the lamp page tries: another lamp, another flasher, another pilot, resistors; and what was counted.
import { numberIn, wordIn } from '../shared/address.svelte.ts';
import { amount, digits } from '../../../show/number.ts';
import type { Consumer, FlashColumn, Indication, LampColumn, LampAnswer, LampsAsk, LoadResistor } from '../../../door/wire.ts';
import type { Try } from '../../../app/asking/together.svelte.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { listed } from '../../../words/core.ts';
import { t } from '../../../words/index.ts';

export const RESISTOR: Entry[] = [
  { field: 'resistorOhms', label: t('lamps-ohms'), unit: 'ohm', decimals: 1, optional: true, bound: 'loadResistor' },
  { field: 'resistorsPerSide', label: t('lamps-per-side'), unit: 'none', decimals: 0, optional: true, bound: 'resistors' },
];
export const COUNT: Entry[] = [
  { field: 'flashes', label: t('lamps-flashes'), unit: 'none', decimals: 0, optional: true, bound: 'flashes' },
  { field: 'seconds', label: t('lamps-seconds'), unit: 'second', decimals: 1, optional: true, bound: 'countedSeconds' },
];
export const FIELDS = [...RESISTOR, ...COUNT].map((entry) => entry.field);

export function indication(): Indication {
  return {
    flasher: wordIn('flasher', 'flasher-kind'),
    pilot: wordIn('pilot', 'pilot-fitting'),
    resistorOhms: numberIn('resistorOhms'),
    resistorsPerSide: numberIn('resistorsPerSide'),
  };
}

const known = (value: Indication) => Object.values(value).some((each) => each !== null && each !== undefined);

export function tried(place: string | null, lamp: Consumer | null): LampsAsk {
  const flashes = numberIn('flashes');
  const seconds = numberIn('seconds');
  const counted = flashes !== null && seconds !== null ? { flashes, seconds } : null;
  return { place, proposed: lamp, indication: known(indication()) ? indication() : null, counted };
}

/** What would be fitted; nothing when the bike stays as it is. */
export function own(place: string, lamp: Consumer | null): Try | null {
  const flasher = known(indication()) ? indication() : null;
  if (!lamp && !flasher) return null;
  return {
    key: `lamps-${place}`,
    name: listed([lamp?.name, flasher ? t('lamps-try-flasher') : null]),
    proposals: [
      ...(lamp ? [{ kind: 'consumer' as const, id: place, consumer: lamp }] : []),
      ...(flasher ? [{ kind: 'flasher' as const, indication: flasher }] : []),
    ],
    fit: [
      ...(lamp ? [{ kind: 'fitConsumer' as const, id: place, consumer: lamp }] : []),
      ...(flasher ? [{ kind: 'fitFlasher' as const, indication: flasher }] : []),
    ],
  };
}

/** The column that the page is about: what is tried, else what is fitted. */
export function looked<C extends { side: string }>(columns: C[]): C | undefined {
  return columns.find((each) => each.side === 'proposed') ?? columns.find((each) => each.side === 'fitted') ?? columns.at(-1);
}

/** The large answer for indicators. */
export function flashAnswer(column: FlashColumn): { value: string; unit: string; meaning: string } {
  const { flashing, rate } = column.indicators;
  if (flashing === 'stops') return { value: t('lamps-flashing-stops'), unit: '', meaning: t(`lamps-side-${column.side}`) };
  if (!rate) return { value: '–', unit: '', meaning: t('lamps-not-known') };
  const same = digits(rate.from, 0) === digits(rate.to, 0);
  return {
    value: same ? digits(rate.from, 0) : t('lamps-band', { from: digits(rate.from, 0), to: digits(rate.to, 0) }),
    unit: '',
    meaning: t('lamps-rate', { flashing: flashing ?? null }),
  };
}

/** The large answer for any other lamp: its light, or what it draws. */
export function lampAnswer(column: LampColumn): { value: string; unit: string; meaning: string } {
  const { lumens, watts, volts } = column.charging;
  const at = { volts: amount(volts, 'volt', 1) };
  return lumens
    ? { value: digits(lumens, 0), unit: 'lm', meaning: t('lamps-light', at) }
    : { value: digits(watts, 1), unit: 'W', meaning: t('lamps-draws', at) };
}

export function flashRows(column: FlashColumn): Row[] {
  const { sideWatts, sideAmperes, oneOut, outageTells, behaviour, madeForWatts } = column.indicators;
  const rows: Row[] = [
    {
      label: t('lamps-side-load'),
      value: amount(sideWatts, 'watt', 1),
      below: madeForWatts ? t('lamps-made-for', { watts: amount(madeForWatts, 'watt', 0) }) : undefined,
      after: amount(sideAmperes, 'ampere', 2),
    },
  ];
  if (oneOut)
    rows.push({
      label: t('lamps-one-out'),
      value: oneOut.to > 0 ? t('lamps-band', { from: digits(oneOut.from, 0), to: digits(oneOut.to, 0) }) : t('lamps-flashing-stops'),
      below: outageTells ? t('lamps-tells') : t('lamps-hides'),
    });
  if (behaviour) {
    rows.push({ label: t('lamps-pilot'), value: t(`lamp-look-${behaviour.pilot}`) });
    rows.push({ label: t('lamps-other-side'), value: t(`lamp-look-${behaviour.otherSide}`), mark: behaviour.otherSide !== 'off' });
  }
  return rows;
}

export function lampRows(sheet: LampAnswer): Row[] {
  return sheet.lamps.map(({ side, consumer, charging, standing }) => ({
    label: t(`lamps-side-${side}`),
    value: amount(charging.watts, 'watt', 1),
    after: amount(charging.amperes, 'ampere', 2),
    below: listed(
      [consumer.name, charging.lumens ? `${digits(charging.lumens, 0)} lm` : '', t('lamps-engine-off', { watts: amount(standing.watts, 'watt', 1) })],
      'dot',
    ),
  }));
}

export const resistorRows = (resistor: LoadResistor): Row[] => [
  { label: t('lamps-ohms'), value: amount(resistor.ohms, 'ohm', 1), below: t('lamps-buy', { ohms: amount(resistor.buyOhms, 'ohm', 1) }) },
  { label: t('lamps-peak'), value: amount(resistor.peakWatts, 'watt', 1), below: t('lamps-mean', { watts: amount(resistor.meanWatts, 'watt', 1) }) },
  { label: t('lamps-rating'), value: amount(resistor.ratingWatts, 'watt', 0) },
];

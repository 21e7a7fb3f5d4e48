// What the wire page tries: a load of the bike or a current of one's own, a way to it, a wire at hand.
import { numberIn, numbersIn, textIn, wordIn } from '../shared/address.svelte.ts';
import { amount, asSold, figure } from '../../../show/number.ts';
import type { Spec, WireAsk, WireChoice, WireAnswer } from '../../../door/wire.ts';
import type { Row } from '../../../parts/answers/row.ts';
import type { Entry } from '../shared/entry.ts';
import { t } from '../../../words/index.ts';

export const AMPERES: Entry[] = [{ field: 'amperes', label: t('wire-amperes'), unit: 'ampere', decimals: 2, note: t('wire-amperes-note'), bound: 'amperes' }];
export const RUN: Entry[] = [
  { field: 'outMetres', label: t('wire-out'), unit: 'metre', decimals: 2, bound: 'wireLength' },
  { field: 'backMetres', label: t('wire-back'), unit: 'metre', decimals: 2, note: t('wire-back-note'), bound: 'wireBack' },
  { field: 'sectionMm2', label: t('wire-section'), unit: 'squareMillimetre', decimals: 2, optional: true, bound: 'wireSection' },
];
export const MORE: Entry[] = [
  { field: 'celsius', label: t('wire-celsius'), unit: 'celsius', decimals: 0, note: t('wire-celsius-note'), bound: 'wireTemperature' },
  { field: 'allowedVolts', label: t('wire-allowed'), unit: 'volt', decimals: 2, bound: 'allowedDrop' },
];
export const FIELDS = [...AMPERES, ...RUN, ...MORE].map((entry) => entry.field);

/** What the page starts from; each can be typed over. */
const START = { outMetres: 1.5, backMetres: 0, celsius: 40 };

/** The loads of the bike: the mark of a consumer and its watts at the voltage of the system. */
export function loads(spec: Spec | undefined) {
  return (spec?.consumers ?? []).map(({ id, consumer }) => ({ id, name: consumer.name, watts: consumer.watts * consumer.count }));
}

/** The load that is looked at: the one from the address, else the first of the bike; none when a current is typed. */
export function chosen(spec: Spec | undefined) {
  if (numberIn('amperes') !== null) return null;
  const all = loads(spec);
  return all.find((load) => load.id === textIn('load')) ?? all[0] ?? null;
}

export function tried(spec: Spec | undefined): WireAsk | null {
  const load = chosen(spec);
  const amperes = numberIn('amperes');
  if (!load && amperes === null) return null;
  return {
    amperes,
    watts: load?.watts ?? null,
    systemVolts: spec?.supply.systemVolts ?? null,
    system: spec?.supply.system ?? null,
    ...numbersIn(['sectionMm2', 'allowedVolts']),
    ...start(),
    list: wordIn('list', 'current-list'),
  };
}

function start() {
  const typed = numbersIn(['outMetres', 'backMetres', 'celsius']);
  return { outMetres: typed.outMetres ?? START.outMetres, backMetres: typed.backMetres ?? START.backMetres, celsius: typed.celsius ?? START.celsius };
}

export function values(sheet: WireAnswer | undefined): Record<string, number | null | undefined> {
  return {
    amperes: numberIn('amperes') ?? sheet?.amperes,
    ...start(),
    sectionMm2: numberIn('sectionMm2'),
    allowedVolts: numberIn('allowedVolts') ?? sheet?.allowedVolts,
  };
}

export const section = (wire: WireChoice): string => amount(wire.sectionMm2, 'squareMillimetre', asSold(wire.sectionMm2));

/** The large answers: wire and fuse. */
export function answers(wire: WireChoice): { value: string; unit: string; meaning: string }[] {
  const size = figure(wire.sectionMm2, 'squareMillimetre', asSold(wire.sectionMm2));
  const fuse = figure(wire.fuseAmperes ?? 0, 'ampere', asSold(wire.fuseAmperes ?? 0));
  return [
    { value: size.number, unit: size.symbol, meaning: t('wire-wire-answer') },
    { value: fuse.number, unit: fuse.symbol, meaning: t('wire-fuse-answer', { colour: wire.fuseColour ?? '' }) },
  ];
}

export const rating = (wire: WireChoice): string =>
  wire.fuseAmperes === null || wire.fuseAmperes === undefined ? t('wire-no-fuse') : amount(wire.fuseAmperes, 'ampere', asSold(wire.fuseAmperes));

export function lines(sheet: WireAnswer, wire: WireChoice): Row[] {
  return [
    {
      label: t('wire-drop'),
      value: amount(wire.dropVolts, 'volt', 2),
      below: t('wire-of-allowed', { volts: amount(sheet.allowedVolts, 'volt', 2) }),
      mark: wire.dropVolts > sheet.allowedVolts,
    },
    { label: t('wire-carries'), value: amount(wire.mayCarryAmperes, 'ampere', asSold(wire.mayCarryAmperes)), mark: wire.mayCarryAmperes < sheet.amperes },
    { label: t('wire-fuse'), value: rating(wire), after: wire.fuseColour ?? undefined, mark: !wire.fuseAmperes },
  ];
}

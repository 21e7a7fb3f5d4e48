// What the mixing page tries: one of four mixes, each with the amounts one usually starts from.
import { flagIn, numberIn, textIn, wordIn } from '../../shared/address.svelte.ts';
import { fromText } from '../shared/surfaces.ts';
import { amount, figure } from '../../../../show/number.ts';
import { cansInWords } from '../../../../pictures/paint/cans.ts';
import type { Mix, MixPart, MixAnswer, Surface } from '../../../../door/wire.ts';
import type { Row } from '../../../../parts/answers/row.ts';
import type { Entry } from '../../shared/entry.ts';
import { listed } from '../../../../words/core.ts';
import { t } from '../../../../words/index.ts';

export type MixKind = Mix['kind'];

/** Amounts to start from: a round figure of each, to be typed over. */
const START: Record<string, number> = {
  fuelLitres: 5,
  partsFuel: 50,
  ready: 200,
  partsBase: 4,
  partsHardener: 1,
  thinnerPercent: 10,
  paintMl: 250,
  squareMetres: 0.5,
  coats: 2,
  spreadingRate: 8,
  solidsPercent: 40,
  dryMicrometres: 30,
  canMl: 400,
};

export const kind = (): MixKind => wordIn('mix', 'mixing-kinds') ?? 'premix';
export const byWeight = (): boolean => flagIn('byWeight') ?? false;
export const ofBase = (): boolean => flagIn('thinnerOfBase') ?? false;
export const film = (): boolean => flagIn('film') ?? false;
/** What was measured with a tape; then no area is typed. */
export const surfaces = (): Surface[] => fromText(textIn('surfaces'));

const number = (field: string): number => numberIn(field) ?? START[field] ?? 0;

const THINNER: Entry = { field: 'thinnerPercent', label: t('mixing-thinner'), unit: 'percent', decimals: 1, bound: 'thinner' };

/** The numbers of a mix that are typed each time. */
export function fields(of: MixKind): Entry[] {
  if (of === 'premix') {
    return [
      { field: 'fuelLitres', label: t('mixing-fuel'), unit: 'litre', decimals: 2, bound: 'fuel' },
      { field: 'partsFuel', label: t('mixing-ratio'), unit: 'none', decimals: 1, note: t('mixing-ratio-note'), bound: 'premixParts' },
    ];
  }
  if (of === 'twoPart') {
    return [
      { field: 'ready', label: t('mixing-ready'), unit: byWeight() ? 'gram' : 'millilitre', decimals: 1, bound: byWeight() ? 'readyGram' : 'readyMl' },
      { field: 'partsBase', label: t('mixing-base'), unit: 'none', decimals: 2, bound: 'mixParts' },
      { field: 'partsHardener', label: t('mixing-hardener'), unit: 'none', decimals: 2, bound: 'mixParts' },
      THINNER,
    ];
  }
  if (of === 'thinning') return [{ field: 'paintMl', label: t('mixing-paint'), unit: 'millilitre', decimals: 1, bound: 'readyMl' }, THINNER];
  const spread: Entry[] = film()
    ? [
        { field: 'solidsPercent', label: t('mixing-solids'), unit: 'percent', decimals: 0, bound: 'solids' },
        { field: 'dryMicrometres', label: t('mixing-film'), unit: 'micrometre', decimals: 0, bound: 'film' },
      ]
    : [{ field: 'spreadingRate', label: t('mixing-spreading-rate'), unit: 'squareMetreLitre', decimals: 1, bound: 'spreading' }];
  const typed: Entry[] =
    surfaces().length > 0 ? [] : [{ field: 'squareMetres', label: t('mixing-area'), unit: 'squareMetre', decimals: 2, bound: 'paintedArea' }];
  return [...typed, ...spread];
}

/** Those that seldom change; they stand below the answer. */
export function more(of: MixKind): Entry[] {
  if (of !== 'cover') return [];
  return [
    { field: 'lossPercent', label: t('mixing-loss'), unit: 'percent', decimals: 0, optional: true, note: t('mixing-loss-note'), bound: 'sprayLoss' },
    { field: 'canMl', label: t('mixing-can'), unit: 'millilitre', decimals: 0, bound: 'can' },
    // Thinner changes the wet film to aim at, which is known only from solids and film.
    ...(film()
      ? [
          {
            field: 'thinnerPercent',
            label: t('mixing-thinner'),
            unit: 'percent' as const,
            decimals: 0,
            optional: true,
            note: t('mixing-thinner-note'),
            bound: 'thinner' as const,
          },
        ]
      : []),
  ];
}
export const DENSITIES: Entry[] = [
  { field: 'baseDensity', label: t('mixing-base-density'), unit: 'gramMillilitre', decimals: 2, optional: true, bound: 'density' },
  { field: 'hardenerDensity', label: t('mixing-hardener-density'), unit: 'gramMillilitre', decimals: 2, optional: true, bound: 'density' },
  { field: 'thinnerDensity', label: t('mixing-thinner-density'), unit: 'gramMillilitre', decimals: 2, optional: true, bound: 'density' },
];

export function values(of: Entry[]): Record<string, number | null> {
  return Object.fromEntries(of.map(({ field, optional }) => [field, numberIn(field) ?? (optional ? null : (START[field] ?? null))]));
}

export function tried(): Mix {
  const of = kind();
  if (of === 'premix') return { kind: of, fuelLitres: number('fuelLitres'), partsFuel: number('partsFuel') };
  if (of === 'thinning') return { kind: of, paintMl: number('paintMl'), thinnerPercent: number('thinnerPercent') };
  if (of === 'twoPart') {
    const densities = { baseDensity: numberIn('baseDensity'), hardenerDensity: numberIn('hardenerDensity'), thinnerDensity: numberIn('thinnerDensity') };
    const parts = { partsBase: number('partsBase'), partsHardener: number('partsHardener'), thinnerPercent: number('thinnerPercent') };
    return { kind: of, product: { ready: number('ready'), byWeight: byWeight(), thinnerOfBase: ofBase(), ...parts, ...densities } };
  }
  const spread = film()
    ? { solidsPercent: number('solidsPercent'), dryMicrometres: number('dryMicrometres'), thinnerPercent: numberIn('thinnerPercent') }
    : { spreadingRate: number('spreadingRate') };
  const loss = { putOn: wordIn('putOn', 'put-on') ?? 'aerosol', lossPercent: numberIn('lossPercent') };
  return { kind: of, area: { surfaces: surfaces(), squareMetres: number('squareMetres'), coats: number('coats'), canMl: number('canMl'), ...spread, ...loss } };
}

const size = (part: MixPart): { value: number; unit: 'gram' | 'millilitre' } =>
  byWeight() && kind() === 'twoPart' ? { value: part.grams ?? 0, unit: 'gram' } : { value: part.millilitres ?? 0, unit: 'millilitre' };

const fine = (value: number) => (value < 100 && !Number.isInteger(value) ? 1 : 0);

/** The large answer of a mix. */
export function headline(sheet: MixAnswer): { value: string; unit: string; meaning: string } {
  const cover = sheet.cover;
  if (cover) return { value: cansInWords(cover.cansLeast, cover.cansMost), unit: '', meaning: sheet.sentence };
  const small = kind() === 'premix' ? sheet.parts.slice(0, 1) : kind() === 'thinning' ? sheet.parts.slice(1) : sheet.parts;
  const sizes = small.map(size);
  const least = Math.min(...sizes.map((each) => each.value));
  return {
    value: listed(
      sizes.map((each) => figure(each.value, each.unit, fine(least)).number),
      'plus',
    ),
    unit: figure(1, sizes[0]?.unit ?? 'millilitre').symbol,
    meaning: sheet.sentence,
  };
}

/** Each part, and the mark up to which the cup is filled with it. */
export function lines(parts: MixPart[]): Row[] {
  let mark = 0;
  return parts.map((part) => {
    const { value, unit } = size(part);
    mark += value;
    const other = unit === 'gram' ? part.millilitres : part.grams;
    return {
      label: part.name,
      value: amount(value, unit, 1),
      after: other === null || other === undefined ? undefined : amount(other, unit === 'gram' ? 'millilitre' : 'gram', 1),
      below: t('mixing-up-to', { mark: amount(mark, unit, fine(mark)) }),
    };
  });
}

export function coverLines(sheet: MixAnswer): Row[] {
  const cover = sheet.cover;
  if (!cover) return [];
  const ml = (value: number) => amount(value, 'millilitre', 0);
  const rows: Row[] = [
    { label: t('mixing-area'), value: amount(cover.squareMetres, 'squareMetre', 3) },
    {
      label: t('mixing-needed'),
      value: cover.leastMl === cover.mostMl ? ml(cover.mostMl) : t('parts-between', { least: ml(cover.leastMl), most: ml(cover.mostMl) }),
    },
    { label: t('mixing-rate'), value: amount(cover.spreadingRate, 'squareMetreLitre', 1) },
  ];
  if (cover.wetMicrometres) rows.push({ label: t('mixing-wet-film'), value: amount(cover.wetMicrometres, 'micrometre', 0) });
  return rows;
}

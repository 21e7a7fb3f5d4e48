// Surfaces as they are measured with a tape: how they are named, and how they stand in an address.
import { amount } from '../../../../show/number.ts';
import type { Surface } from '../../../../door/wire.ts';
import { keys, t } from '../../../../words/index.ts';

export type Shape = Surface['kind'];
export const SHAPES = keys('surfaces-presets');

/** Measures to start from, to be typed over: a small tank, an 18-inch rim, a frame tube. */
export function usual(shape: Shape): Surface {
  if (shape === 'shell') return { kind: shape, lengthMm: 480, girthMm: 620, bothSides: false, count: 1 };
  if (shape === 'rim') return { kind: shape, diameterMm: 460, girthMm: 110, count: 1 };
  return { kind: shape, diameterMm: 30, lengthMm: 500, count: 1 };
}

/** “900 mm × 210 mm, both sides, 2 alike” */
export function measures(surface: Surface): string {
  const mm = (value: number) => amount(value, 'millimetre', Number.isInteger(value) ? 0 : 1);
  const [one, other] =
    surface.kind === 'shell'
      ? [surface.lengthMm, surface.girthMm]
      : surface.kind === 'rim'
        ? [surface.diameterMm, surface.girthMm]
        : [surface.diameterMm, surface.lengthMm];
  const both = surface.kind === 'shell' && surface.bothSides;
  return t('surfaces-measures', { one: mm(one), other: mm(other), both, count: surface.count });
}

/** As they stand in an address: `shell:480:620:1`, `shellBoth:…`, `rim:460:110:1`, `tube:30:500:2`. */
export function toText(surfaces: Surface[]): string | null {
  const one = (surface: Surface) => {
    if (surface.kind === 'shell') return [surface.bothSides ? 'shellBoth' : 'shell', surface.lengthMm, surface.girthMm, surface.count];
    if (surface.kind === 'rim') return ['rim', surface.diameterMm, surface.girthMm, surface.count];
    return ['tube', surface.diameterMm, surface.lengthMm, surface.count];
  };
  return surfaces.length === 0 ? null : surfaces.map((surface) => one(surface).join(':')).join(',');
}

/** What cannot be read is left out. */
export function fromText(text: string | null): Surface[] {
  return (text ?? '').split(',').flatMap((part): Surface[] => {
    const [kind = '', ...rest] = part.split(':');
    const [a = NaN, b = NaN, pieces = NaN] = rest.map(Number);
    // The door tells a measure outside its range; what is no number at all was never measured.
    if (![a, b, pieces].every(Number.isFinite)) return [];
    const count = Math.round(pieces);
    if (kind === 'shell' || kind === 'shellBoth') return [{ kind: 'shell', lengthMm: a, girthMm: b, bothSides: kind === 'shellBoth', count }];
    if (kind === 'rim') return [{ kind, diameterMm: a, girthMm: b, count }];
    return kind === 'tube' ? [{ kind, diameterMm: a, lengthMm: b, count }] : [];
  });
}

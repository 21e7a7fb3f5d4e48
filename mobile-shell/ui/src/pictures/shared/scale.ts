// Scales for the pictures: a value to a place on the paper, and round numbers for the ticks.

export type Scale = (value: number) => number;

export function scale(from: number, to: number, placeFrom: number, placeTo: number): Scale {
  const span = to - from || 1;
  return (value) => placeFrom + ((value - from) / span) * (placeTo - placeFrom);
}

/** Round numbers between 0 and `most`, about so many. */
export function ticks(most: number, about: number): number[] {
  if (!(most > 0)) return [];
  const rough = most / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((factor) => factor * power).find((candidate) => candidate >= rough) ?? 10 * power;
  const out: number[] = [];
  for (let value = step; value <= most * 1.0001; value += step) out.push(Number(value.toPrecision(6)));
  return out;
}

/** A line through points, as SVG path data. */
export function line(points: [number, number][]): string {
  return points.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
}

export function round(value: number): number {
  return Math.round(value * 10) / 10;
}

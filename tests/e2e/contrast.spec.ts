// The colours of tokens.css, each pair that is used, in both themes: text 7:1 (WCAG 2.2, 1.4.6), graphics 3:1 (1.4.11).
import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';

const css = readFileSync(new URL('../../mobile-shell/ui/src/tokens.css', import.meta.url), 'utf8');

/** Each colour with its value by day and by night. */
const tokens = new Map([...css.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(([, name, day, night]) => [name, [day, night]]));

const TEXT: [string, string[]][] = [
  ['ink', ['paper', 'sheet', 'mark']],
  ['soft', ['paper', 'sheet', 'mark']],
  ['accent', ['paper', 'sheet']],
  ['bad', ['paper', 'sheet', 'mark']],
  ['on-accent', ['accent']],
  ['paper', ['ink']],
];
const GRAPHICS: [string, string[]][] = [
  ['hatch', ['sheet']],
  ['accent', ['mark']],
  ['bad', ['sheet', 'mark']],
];

/** Relative luminance after WCAG 2.2, from sRGB. */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = parseInt(hex.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

test('black on white is 21, and equal colours are 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#7d2f10', '#7d2f10')).toBe(1);
});

for (const [kind, pairs, least] of [
  ['text', TEXT, 7],
  ['graphics', GRAPHICS, 3],
] as const) {
  for (const [ink, grounds] of pairs) {
    for (const ground of grounds) {
      for (const [at, theme] of ['day', 'night'].entries()) {
        test(`${kind}: ${ink} on ${ground} by ${theme}`, () => {
          const [front, back] = [tokens.get(ink)?.[at], tokens.get(ground)?.[at]];
          expect(front && back, 'both colours stand in tokens.css').toBeTruthy();
          expect(contrast(front ?? '', back ?? '')).toBeGreaterThanOrEqual(least);
        });
      }
    }
  }
}

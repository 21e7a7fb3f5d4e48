// Measures what can be touched: at least 56 x 56, and so far apart that a knuckle meets one of them.
import type { Page } from '@playwright/test';

interface Target {
  name: string;
  /** What it scrolls with: targets of a bar that lies over the page are compared among themselves. */
  layer: string;
  x: number;
  y: number;
  width: number;
  height: number;
}

const LEAST = 56;
const APART = 8;
/** Rounding of sub-pixels. */
const SLACK = 0.6;

export async function wrongTargets(page: Page): Promise<string[]> {
  const targets = await page.evaluate(() => {
    const open = document.querySelector('dialog[open]');
    const root = open ?? document.body;
    const found = [...root.querySelectorAll<HTMLElement>('a[href], button, input, textarea, select, label:has(input)')];
    return found.flatMap((element) => {
      // A radio fills its label, which is the target; what is moved out of sight is no target.
      if (element.matches('label *, .unseen, .skip')) return [];
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) return [];
      const layer = element.closest('nav, .action, .low, .toast, .foot, aside')?.className || element.closest('nav, aside')?.tagName || 'page';
      const name = (element.getAttribute('aria-label') ?? element.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 50);
      return [{ name, layer, x: box.x, y: box.y, width: box.width, height: box.height }];
    });
  });
  return [...targets.flatMap(tooSmall), ...targets.flatMap((one, at) => targets.slice(at + 1).flatMap((other) => tooClose(one, other)))];
}

function tooSmall(target: Target): string[] {
  const { name, width, height } = target;
  const fits = width >= LEAST - SLACK && height >= LEAST - SLACK;
  return fits ? [] : [`“${name}” is ${width.toFixed(1)} x ${height.toFixed(1)}`];
}

/** Room between two targets along an axis. What a target has beyond 56 counts as room: a 56 box fits into it further in. */
function room(from: number, size: number, otherFrom: number, otherSize: number): number {
  const gap = from < otherFrom ? otherFrom - (from + size) : from - (otherFrom + otherSize);
  return gap + (size - LEAST) / 2 + (otherSize - LEAST) / 2;
}

function tooClose(one: Target, other: Target): string[] {
  if (one.layer !== other.layer) return [];
  const across = room(one.x, one.width, other.x, other.width);
  const down = room(one.y, one.height, other.y, other.height);
  const apart = Math.max(across, down) >= APART - SLACK;
  return apart ? [] : [`“${one.name}” and “${other.name}” are ${Math.max(across, down).toFixed(1)} apart`];
}

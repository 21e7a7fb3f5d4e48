// The time at hand, kept while the app is open, and when to remind of a bundle.
import { FIRST_MINUTES } from '../../app/asking/early.ts';
import type { ShelfAnswer } from '../../door/wire.ts';

let minutes = $state(FIRST_MINUTES);

export function atHand(): number {
  return minutes;
}

export function setAtHand(chosen: number) {
  minutes = chosen;
}

const WEEK_MS = 7 * 86_400_000;
const MANY = 40;

/** The only copy is on this device, and it has grown old or large since the last bundle. */
export function exportIsOld(shelf: ShelfAnswer, nowMs: number): boolean {
  const open = shelf.bikes.find((bike) => bike.id === shelf.open);
  if (!open || open.invented || shelf.changesSinceExport === 0) return false;
  const never = !shelf.exportedMs;
  return shelf.changesSinceExport >= MANY || (!never && nowMs - (shelf.exportedMs ?? 0) > WEEK_MS);
}

// Until when this device has shown what came about by itself. Kept on the device, not on the bike, and small enough to be
// read before the first question is asked.

const KEY = 'layshaft.seen';

function load(): number | null {
  try {
    const kept = Number(localStorage.getItem(KEY) ?? NaN);
    return Number.isFinite(kept) && kept > 0 ? kept : null;
  } catch {
    // Unreadable or shut off: then nothing is said of the time before.
    return null;
  }
}

/** Milliseconds since 1970; none on the first visit. */
export const seenAtStart = load();

export function keepSeen(atMs: number) {
  try {
    localStorage.setItem(KEY, String(atMs));
  } catch {
    // Without room the next visit says nothing of the time before.
  }
}

/** What *Today* asks for. The early question and the page's own have to be the same. */
export function todayAsk(minutesAtHand: number, lastSeenMs: number | null): { minutesAtHand: number; lastSeenMs?: number } {
  return lastSeenMs === null ? { minutesAtHand } : { minutesAtHand, lastSeenMs };
}

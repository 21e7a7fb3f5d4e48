// When and where a call is made: the page's clock, and how the local clock stands against UTC around now.
import type { Moment, Zone, ZoneShift } from '../../../../bindings/generated/typescript/door.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
const WEEK = 7 * DAY;

/** Shifts are told from a year ago to two years ahead: no plan of a rebuild reaches further. */
const BACK = 366 * DAY;
const AHEAD = 731 * DAY;

let known: { day: number; offset: number; zone: Zone } | null = null;

/**
 * The zone goes without its name: the core reads only the shifts, and the first question for the name costs a slow phone
 * a tenth of a second, just when it opens the app.
 */
export function moment(now: number = Date.now()): Moment {
  const day = Math.floor(now / DAY);
  const here = offset(now);
  // The traveller's clock changes its zone, and the years at hand move on.
  if (known?.day !== day || known.offset !== here) {
    known = { day, offset: here, zone: { name: '', shifts: shifts(now - BACK, now + AHEAD) } };
  }
  return { nowMs: now, zone: known.zone };
}

/** Where the local clock is put forward or back, to the minute. No clock is put forward and back within one week. */
function shifts(from: number, to: number): ZoneShift[] {
  const start = Math.floor(from / MINUTE) * MINUTE;
  const found: ZoneShift[] = [{ fromMs: start, offsetMinutes: offset(start) }];
  for (let at = start; at < to; at += WEEK) {
    if (offset(at) === offset(at + WEEK)) continue;
    let before = at;
    let after = at + WEEK;
    while (after - before > MINUTE) {
      const middle = before + Math.floor((after - before) / 2 / MINUTE) * MINUTE;
      if (offset(middle) === offset(at)) before = middle;
      else after = middle;
    }
    found.push({ fromMs: after, offsetMinutes: offset(after) });
  }
  return found;
}

/** Local time minus UTC in minutes. */
function offset(at: number): number {
  return -new Date(at).getTimezoneOffset();
}

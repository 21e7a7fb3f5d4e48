// Days and times of day on the local clock.

/** A format is made when it is first needed: making one is slow, and the first page needs few. */
function format(options: Intl.DateTimeFormatOptions): (date: Date) => string {
  let made: Intl.DateTimeFormat | undefined;
  return (date) => (made ??= new Intl.DateTimeFormat('en-GB', options)).format(date);
}
const inYear = format({ weekday: 'short', day: 'numeric', month: 'short' });
const withYear = format({ day: 'numeric', month: 'short', year: 'numeric' });
const atTime = format({ hour: '2-digit', minute: '2-digit' });
const dayOfWeek = format({ weekday: 'long' });

/** Sat 4 Apr; with the year when it is not the present one. */
export function day(ms: number, nowMs = Date.now()): string {
  const date = new Date(ms);
  if (date.getFullYear() !== new Date(nowMs).getFullYear()) return withYear(date);
  return inYear(date).replace(',', '');
}

export function time(ms: number): string {
  return atTime(new Date(ms));
}

/** Thu 26 Mar, 21:00 */
export function moment(ms: number): string {
  return `${day(ms)}, ${time(ms)}`;
}

/** A local day as it crosses the door: `YYYY-MM-DD`. */
export function dayMark(date: Date): string {
  const month = String(date.getMonth() + 1).padStart(2, '0');
  return `${date.getFullYear()}-${month}-${String(date.getDate()).padStart(2, '0')}`;
}

/** A local day and time as the system's picker writes it: `YYYY-MM-DDThh:mm`. */
export function momentMark(date: Date): string {
  return `${dayMark(date)}T${clockTime(date.getHours() * 60 + date.getMinutes())}`;
}

/** The instant of such a day and time; nothing where there is none. */
export function instantOf(mark: string): number | null {
  const ms = mark ? new Date(mark).getTime() : Number.NaN;
  return Number.isFinite(ms) ? ms : null;
}

/** A `YYYY-MM-DD` as a person reads it. */
export function dayOf(mark: string): string {
  const [year = 0, month = 1, date = 1] = mark.split('-').map(Number);
  return day(new Date(year, month - 1, date).getTime());
}

/** Monday is 1. */
export function weekday(number: number): string {
  // 1 January 2024 was a Monday.
  return dayOfWeek(new Date(2024, 0, number));
}

/** 18:30 from minutes after midnight. */
export function clockTime(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

/** 34:59 of a running countdown. */
export function countdown(ms: number): string {
  const seconds = Math.max(0, Math.ceil(ms / 1000));
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  const two = (n: number) => String(n).padStart(2, '0');
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

// Days and times of day on the local clock.
import { clockTime, dayInWords, momentInWords } from '../words/core.ts';
import { t, type Key } from '../words/index.ts';

export { clockTime };

/** Sat 4 Apr; with the year when it is not the present one. */
export function day(ms: number, nowMs = Date.now()): string {
  const date = new Date(ms);
  return dayInWords(dayMark(date), date.getFullYear() !== new Date(nowMs).getFullYear());
}

const minuteOf = (date: Date) => date.getHours() * 60 + date.getMinutes();

export function time(ms: number): string {
  return clockTime(minuteOf(new Date(ms)));
}

/** Thu 26 Mar, 21:00 */
export function moment(ms: number): string {
  return momentInWords(day(ms), minuteOf(new Date(ms)));
}

/** A local day as it crosses the door: `YYYY-MM-DD`. */
export function dayMark(date: Date): string {
  const month = String(date.getMonth() + 1).padStart(2, '0');
  return `${date.getFullYear()}-${month}-${String(date.getDate()).padStart(2, '0')}`;
}

/** A local day and time as the system's picker writes it: `YYYY-MM-DDThh:mm`. */
export function momentMark(date: Date): string {
  return `${dayMark(date)}T${clockTime(minuteOf(date))}`;
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
export const weekday = (number: number): string => t(`weekday-${String(number) as Key<'weekday'>}`);

/** 34:59 of a running countdown. */
export function countdown(ms: number): string {
  const seconds = Math.max(0, Math.ceil(ms / 1000));
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  const two = (n: number) => String(n).padStart(2, '0');
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

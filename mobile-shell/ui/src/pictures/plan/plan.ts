// Where the jobs of the plan stand on the paper.
import type { PlanRow, PlanAnswer } from '../../door/wire.ts';

export const ROW = 66;
export const HEAD = 34;

export interface Parcel {
  title: string;
  atMs: number;
}

export interface Bar {
  key: string;
  title: string;
  /** The job behind the bar; none for a parcel. */
  job: string | null;
  startMs: number;
  endMs: number;
  row: PlanRow | null;
  critical: boolean;
}

/** The bars that begin inside the days shown, in the order of their dates; parcels among them. */
export function bars(sheet: PlanAnswer, parcels: Parcel[]): Bar[] {
  const jobs = sheet.rows.flatMap((row): Bar[] => {
    const startMs = row.work[0]?.fromMs ?? (row.state === 'done' ? undefined : row.waitUntilMs && sheet.fromMs);
    if (startMs === undefined || startMs === null || row.state === 'done') return [];
    const endMs = Math.max(row.work.at(-1)?.toMs ?? startMs, row.waitUntilMs ?? 0);
    return [{ key: row.job, title: row.title, job: row.job, startMs, endMs, row, critical: row.critical }];
  });
  const flags = parcels.map((parcel, at): Bar => ({
    key: `parcel-${at}`,
    title: parcel.title,
    job: null,
    startMs: parcel.atMs,
    endMs: parcel.atMs,
    row: null,
    critical: false,
  }));
  return [...jobs, ...flags]
    .filter((bar) => bar.startMs < sheet.toMs && bar.endMs >= sheet.fromMs)
    .sort((a, b) => a.startMs - b.startMs || Number(b.critical) - Number(a.critical));
}

/** Jobs that are not done and begin after the days shown, or cannot be planned. */
export function beyond(sheet: PlanAnswer): PlanRow[] {
  return sheet.rows.filter((row) => {
    const start = row.work[0]?.fromMs;
    return row.state !== 'done' && (start === undefined ? !row.waitUntilMs : start >= sheet.toMs);
  });
}

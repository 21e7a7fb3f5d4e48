// What this device prefers, as it is kept: on the device, not on the bike. Small enough for the first script.
import type { Unit } from '../door/wire.ts';

export type Theme = 'system' | 'day' | 'night';

/** The language as the device has it. */
export const AS_DEVICE = 'device';

export interface Kept {
  theme: Theme;
  /** The tag of a language, or as the device has it. */
  language: string;
  /** For a unit of the core, the unit that is shown instead. */
  units: Partial<Record<Unit, Unit>>;
  readAloud: boolean;
  /** Cups that the owner pours with, millilitres; empty: none was said. */
  cups: number[];
  /** When the last bundle was saved, milliseconds since 1970. */
  exportedMs: number | null;
}

const KEY = 'layshaft.settings';
const FIRST: Kept = { theme: 'system', language: AS_DEVICE, units: {}, readAloud: false, cups: [], exportedMs: null };

export function loadKept(): Kept {
  try {
    return { ...FIRST, ...(JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Kept>) };
  } catch {
    // Unreadable or shut off: the first settings hold.
    return { ...FIRST };
  }
}

export function keep(kept: Kept) {
  try {
    localStorage.setItem(KEY, JSON.stringify(kept));
  } catch {
    // Without room to keep them, the settings hold until the page is closed.
  }
}

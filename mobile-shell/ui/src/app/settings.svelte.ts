// What this device prefers: theme, the other unit where one is chosen, read aloud, the cups at hand. Kept on the device, not on the bike.
import type { Unit } from '../door/wire.ts';
import { device } from '../words/numbers.ts';

export type Theme = 'system' | 'day' | 'night';

interface Kept {
  theme: Theme;
  /** For a unit of the core, the unit that is shown instead. */
  units: Partial<Record<Unit, Unit>>;
  readAloud: boolean;
  /** Cups that the owner pours with, millilitres; empty: none was said. */
  cups: number[];
  /** When the last bundle was saved, milliseconds since 1970. */
  exportedMs: number | null;
}

const KEY = 'layshaft.settings';
const FIRST: Kept = { theme: 'system', units: {}, readAloud: false, cups: [], exportedMs: null };

function load(): Kept {
  try {
    return { ...FIRST, ...(JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Kept>) };
  } catch {
    // Unreadable or shut off: the first settings hold.
    return { ...FIRST };
  }
}

class Settings {
  #kept = $state(load());

  get theme() {
    return this.#kept.theme;
  }
  get readAloud() {
    return this.#kept.readAloud;
  }
  get cups() {
    return this.#kept.cups;
  }
  get exportedMs() {
    return this.#kept.exportedMs;
  }

  setTheme(theme: Theme) {
    this.#kept.theme = theme;
    this.#keep();
    this.showTheme();
  }

  setReadAloud(on: boolean) {
    this.#kept.readAloud = on;
    this.#keep();
  }

  setCups(cups: number[]) {
    this.#kept.cups = cups;
    this.#keep();
  }

  noteExport(atMs: number) {
    this.#kept.exportedMs = atMs;
    this.#keep();
  }

  /** The units that are shown instead of the core's; read it to notice when they change. */
  get units(): string {
    return JSON.stringify(this.#kept.units);
  }

  /** The unit in which a quantity is shown. */
  shownIn(unit: Unit): Unit {
    return this.#kept.units[unit] ?? unit;
  }

  show(unit: Unit, as: Unit) {
    this.#kept.units[unit] = as;
    this.#keep();
  }

  /** Puts the theme on the page, and its paper behind the system's own bars. */
  showTheme() {
    const root = document.documentElement;
    if (this.#kept.theme === 'system') delete root.dataset.theme;
    else root.dataset.theme = this.#kept.theme;
    const paper = getComputedStyle(document.body).backgroundColor;
    if (this.#kept.theme === 'system' || !paper) return;
    const colour = getComputedStyle(root).backgroundColor;
    for (const meta of document.querySelectorAll('meta[name="theme-color"]')) meta.setAttribute('content', colour);
  }

  #keep() {
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#kept));
    } catch {
      // Without room to keep them, the settings hold until the page is closed.
    }
  }
}

export const settings = new Settings();
device.shownIn = (unit) => settings.shownIn(unit);

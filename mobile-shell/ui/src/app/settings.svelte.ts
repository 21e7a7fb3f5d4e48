// What this device prefers: theme, language, the other unit where one is chosen, read aloud, the cups at hand.
import type { Unit } from '../door/wire.ts';
import { device } from '../words/numbers.ts';
import { keep, loadKept, type Theme } from './kept.ts';

class Settings {
  #kept = $state(loadKept());

  get theme() {
    return this.#kept.theme;
  }
  get language() {
    return this.#kept.language;
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

  /** It is spoken from the next start on. */
  setLanguage(tag: string) {
    this.#kept.language = tag;
    this.#keep();
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
    keep(this.#kept);
  }
}

export const settings = new Settings();
device.shownIn = (unit) => settings.shownIn(unit);

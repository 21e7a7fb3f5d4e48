// What came about while nobody looked. A visit begins when the app opens or comes back into view; what fell between the
// last look and that moment is said on *Today* until somebody has seen it.
import { keepSeen, seenAtStart } from './seen.ts';

const BEAT_MS = 30_000;

class Away {
  /** Since when nothing was seen, milliseconds since 1970; none on the first visit. */
  sinceMs = $state(seenAtStart);
  /** When this visit began. */
  #backMs = $state(Date.now());
  #lookedMs = Date.now();
  /** Nothing of the time away is left to be shown: from then on the moment of the last look moves on. */
  #seen = $state(seenAtStart === null);

  constructor() {
    this.#look();
    document.addEventListener('visibilitychange', () => (document.visibilityState === 'visible' ? this.#comeBack() : this.#look()));
    addEventListener('pagehide', () => this.#look());
    // A phone may end the app without a word.
    setInterval(() => document.visibilityState === 'visible' && this.#look(), BEAT_MS);
  }

  /** Of what came about, that which fell into the time away. What came since stands on the page itself. */
  missed<T extends { atMs: number }>(dues: T[]): T[] {
    return this.#seen ? [] : dues.filter((due) => due.atMs <= this.#backMs);
  }

  /** All of it was seen, or there was nothing. */
  settle() {
    this.#seen = true;
    this.#look();
  }

  #look() {
    if (!this.#seen) return;
    this.#lookedMs = Date.now();
    keepSeen(this.#lookedMs);
  }

  #comeBack() {
    // What was not seen yet is still to be shown, together with what came since.
    if (this.#seen) this.sinceMs = this.#lookedMs;
    this.#backMs = Date.now();
    this.#seen = false;
  }
}

export const away = new Away();

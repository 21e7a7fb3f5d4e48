// The time of day for pages that count down. It ticks on the minute, and when the app comes back into view.

class Clock {
  #now = $state(Date.now());

  constructor() {
    setInterval(() => this.tick(), 20_000);
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') this.tick();
    });
  }

  get nowMs() {
    return this.#now;
  }

  /** The minute, for what need not follow every tick. */
  get minute() {
    return Math.floor(this.#now / 60_000);
  }

  tick() {
    this.#now = Date.now();
  }
}

export const clock = new Clock();

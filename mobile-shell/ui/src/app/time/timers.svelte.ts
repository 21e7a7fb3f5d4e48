// Short clocks that start from a step at the bench. They live on this device, survive a reload, and ring once.

export interface Timer {
  job: string;
  step: number;
  endsMs: number;
}

const KEY = 'layshaft.timers';

function load(): Timer[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(kept) ? (kept as Timer[]).filter((timer) => Number.isFinite(timer.endsMs)) : [];
  } catch {
    return [];
  }
}

/** Three short tones, made on the device. */
function ring() {
  navigator.vibrate?.([300, 150, 300]);
  try {
    const audio = new AudioContext();
    for (const at of [0, 0.45, 0.9]) {
      const tone = audio.createOscillator();
      const gain = audio.createGain();
      tone.frequency.value = 880;
      gain.gain.setValueAtTime(0.3, audio.currentTime + at);
      gain.gain.exponentialRampToValueAtTime(0.001, audio.currentTime + at + 0.3);
      tone.connect(gain).connect(audio.destination);
      tone.start(audio.currentTime + at);
      tone.stop(audio.currentTime + at + 0.32);
    }
  } catch {
    // No sound on this device: the words on the page say it.
  }
}

class Timers {
  #timers = $state(load());
  nowMs = $state(Date.now());
  #rung = new Set<number>();

  constructor() {
    for (const timer of this.#timers) if (timer.endsMs <= this.nowMs) this.#rung.add(timer.endsMs);
    setInterval(() => this.#tick(), 500);
  }

  of(job: string): Timer[] {
    return this.#timers.filter((timer) => timer.job === job);
  }

  start(job: string, step: number, minutes: number) {
    this.stop(job, step);
    this.nowMs = Date.now();
    this.#timers.push({ job, step, endsMs: this.nowMs + minutes * 60_000 });
    this.#keep();
  }

  stop(job: string, step: number) {
    this.#timers = this.#timers.filter((timer) => timer.job !== job || timer.step !== step);
    this.#keep();
  }

  #tick() {
    if (this.#timers.length === 0) return;
    this.nowMs = Date.now();
    for (const timer of this.#timers) {
      if (timer.endsMs > this.nowMs || this.#rung.has(timer.endsMs)) continue;
      this.#rung.add(timer.endsMs);
      ring();
    }
  }

  #keep() {
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#timers));
    } catch {
      // Without room the clock still runs while the app is open.
    }
  }
}

export const timers = new Timers();

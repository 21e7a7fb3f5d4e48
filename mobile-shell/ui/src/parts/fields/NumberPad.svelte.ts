// What the number pad does: keys, the other unit, and reading what was typed.
import { settings } from '../../app/settings.svelte.ts';
import { inWords } from '../../words/core.ts';
import { signs, unitCard } from '../../words/numbers.ts';
import { digits } from '../../show/number.ts';
import type { Unit } from '../../door/wire.ts';

const LONGEST = 12;

/** A plain decimal without grouping, as it is typed. */
function plain(value: number, decimals: number): string {
  return String(Number(value.toFixed(Math.max(decimals, 4)))).replace('.', signs.decimal());
}

/** Both signs are read in every language: who types a number has no groups in it. */
const POINT = /[.,]/;

/** What is accepted, in the unit of the field. */
export interface Limits {
  min: number;
  max: number;
  /** What is usual, to be tapped in place of typed. */
  usual?: number[];
}

export class Typed {
  text = $state('');
  /** Nothing typed yet: the first key replaces what stands there. */
  #fresh = true;
  readonly unit: Unit;
  readonly bound: Limits | undefined;

  constructor(value: number | null, unit: Unit, bound: Limits | undefined) {
    this.unit = unit;
    this.bound = bound;
    this.text = value === null ? '' : plain(this.#toShown(value), unitCard(this.shown).decimals);
  }

  get shown(): Unit {
    const shown = settings.shownIn(this.unit);
    return shown === this.unit || unitCard(this.unit).other?.unit === shown ? shown : this.unit;
  }

  get symbol(): string {
    const { value } = this;
    return inWords(this.shown, value === null ? 0 : this.#toShown(value));
  }

  /** The unit that the unit key would switch to. */
  get otherUnit(): Unit | null {
    const other = unitCard(this.unit).other?.unit ?? null;
    return other && this.shown === other ? this.unit : other;
  }

  /** What is usual, while the unit is the one that it is usual in. */
  get usual(): number[] {
    return this.shown === this.unit ? (this.bound?.usual ?? []) : [];
  }

  get negative(): boolean {
    return this.bound === undefined || this.bound.min < 0;
  }

  /** What was typed, in the unit of the core; `null` when nothing or no number stands there. */
  get value(): number | null {
    const text = this.text.trim().replace(signs.decimal(), '.').replace(POINT, '.').replace('\u2212', '-');
    if (!/^-?(\d+[.]?\d*|[.]\d+)$/.test(text)) return null;
    return this.#fromShown(Number(text));
  }

  get outside(): boolean {
    const value = this.value;
    return value !== null && this.bound !== undefined && (value < this.bound.min || value > this.bound.max);
  }

  /** The accepted range in the unit that is shown. */
  get range(): { from: string; to: string } | null {
    if (!this.bound) return null;
    const decimals = unitCard(this.shown).decimals;
    const write = (value: number) => digits(this.#toShown(value), Number.isInteger(this.#toShown(value)) ? 0 : Math.max(1, decimals));
    return { from: write(this.bound.min), to: write(this.bound.max) };
  }

  press(key: string) {
    if (key === 'erase') this.text = this.#fresh ? '' : this.text.slice(0, -1);
    else if (key === 'clear') this.text = '';
    else if (key === 'sign') this.text = this.text.startsWith('-') ? this.text.slice(1) : `-${this.text}`;
    else {
      const before = this.#fresh ? '' : this.text;
      if (before.length >= LONGEST || (key === '.' && POINT.test(before))) return;
      this.text = before + (key === '.' ? signs.decimal() : key);
    }
    this.#fresh = false;
  }

  typed(text: string) {
    this.text = text.slice(0, LONGEST);
    this.#fresh = false;
  }

  switchUnit() {
    const value = this.value;
    const next = this.otherUnit;
    if (!next) return;
    settings.show(this.unit, next);
    if (value !== null) this.text = plain(this.#toShown(value), unitCard(next).decimals);
    this.#fresh = true;
  }

  #toShown(value: number): number {
    const other = unitCard(this.unit).other;
    return other && this.shown === other.unit ? value * other.factor + other.offset : value;
  }

  #fromShown(shown: number): number {
    const other = unitCard(this.unit).other;
    if (!other || this.shown !== other.unit) return shown;
    // Ten digits are kept: what was typed comes back as it was typed.
    return Number(((shown - other.offset) / other.factor).toPrecision(10));
  }
}

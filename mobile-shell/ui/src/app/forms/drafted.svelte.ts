// What a form or a sheet holds until it is saved. It is kept as a draft from the first change on, so that a reload, a tap on
// another page or a closed app loses nothing; once it is saved or closed, nothing is left of it.
import { SvelteSet } from 'svelte/reactivity';
import { draftOf, dropDraft, keepDraft } from './drafts.ts';

/** What was typed, and what it began from: only what differs goes over what has become of the record meanwhile. */
interface Kept {
  from: Record<string, unknown>;
  now: Record<string, unknown>;
}

const isRecord = (given: unknown): given is Record<string, unknown> => typeof given === 'object' && given !== null && !Array.isArray(given);
const isKept = (given: unknown): given is Kept => isRecord(given) && isRecord(given.from) && isRecord(given.now);
/** Nothing is nothing, whether it is written down or left out. */
const text = (value: unknown) => JSON.stringify(value, (_, each: unknown) => each ?? undefined) ?? '';
/** Another version may have kept another shape. */
const alike = (one: unknown, other: unknown) => one == null || other == null || (typeof one === typeof other && Array.isArray(one) === Array.isArray(other));

/** The names of the fields that somebody changed and not yet saved; none where there is no draft. */
function changedIn(kept: Kept | null, fresh: object): string[] {
  if (!kept) return [];
  const known = fresh as Record<string, unknown>;
  const names = Object.keys({ ...kept.from, ...kept.now });
  return names.filter((name) => text(kept.now[name]) !== text(kept.from[name]) && alike(kept.now[name], known[name]));
}

/** Whether a draft of that name waits to be taken up: a sheet that was open opens again. */
export const isDrafted = (form: string) => draftOf(form, isKept) !== null;

/** Which one of a list was open, of those sheets whose draft says `at` which place it belongs. */
export function draftedPlace(form: string): number | null {
  const at = draftOf(form, isKept)?.now.at;
  return typeof at === 'number' && Number.isInteger(at) && at >= 0 ? at : null;
}

/** The forms and sheets on the page that hold something which is not saved: nothing interrupts them. */
const halfFilled = new SvelteSet<object>();
export const isHalfFilled = () => halfFilled.size > 0;

export class Drafted<T extends object> {
  /** Nothing until the form is filled. */
  value = $state<T | null>(null);
  /** What stands there was typed earlier and never saved. */
  found = $state(false);
  #form = '';
  #fresh: T | null = null;
  #over = false;

  constructor() {
    $effect(() => this.#keep());
  }

  /** Fills the form once; what somebody types is not overwritten by an answer that comes later. `form` names its draft. */
  fill(form: string, fresh: T) {
    if (this.value) return;
    this.#form = form;
    this.#fresh = structuredClone(fresh);
    const kept = draftOf(form, isKept);
    const changed = changedIn(kept, fresh);
    const typed = Object.fromEntries(changed.map((name) => [name, kept?.now[name]]));
    this.value = { ...structuredClone(fresh), ...typed };
    this.found = changed.length > 0;
  }

  /** Back to what the form began with. */
  discard() {
    if (this.#fresh) this.value = structuredClone(this.#fresh);
    this.found = false;
  }

  /** It is saved, or closed on purpose. */
  done() {
    this.#over = true;
    halfFilled.delete(this);
    if (this.#form) dropDraft(this.#form);
  }

  #keep() {
    const now = $state.snapshot(this.value);
    if (!now || this.#over) return;
    if (text(now) === text(this.#fresh)) {
      dropDraft(this.#form);
      return;
    }
    keepDraft(this.#form, { from: this.#fresh, now });
    halfFilled.add(this);
    return () => halfFilled.delete(this);
  }
}

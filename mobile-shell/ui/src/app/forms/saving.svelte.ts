// Sends what a form holds through the door and keeps what was refused, field by field. Nothing is stored on a refusal.
// The page goes to the field that was refused; the sentence stands there until that field is changed.
import { tick } from 'svelte';
import { asRefusal, desk } from '../asking/desk.svelte.ts';
import type { Command, Outcome, Refusal } from '../../door/wire.ts';

export class Saving {
  busy = $state(false);
  refusal = $state.raw<Refusal | null>(null);
  readonly #form: () => object | null | undefined;
  #refused = '';

  /** `form` gives what the form holds. */
  constructor(form: () => object | null | undefined = () => null) {
    this.#form = form;
  }

  /** What stands in the field that was refused; where the form knows no such field, all of it. */
  get #standing(): string {
    const form = this.#form() as Record<string, unknown> | null | undefined;
    const field = this.refusal?.field ?? '';
    return JSON.stringify(form && field in form ? form[field] : form) ?? '';
  }

  #says(): string {
    return this.refusal && this.#standing === this.#refused ? this.refusal.message : '';
  }

  /** The refusal's sentence when it belongs to this field. */
  at(field: string): string {
    return this.refusal?.field === field ? this.#says() : '';
  }

  /** The refusal's sentence when it belongs to none of the fields that the form shows. */
  rest(shown: string[]): string {
    return this.refusal && !shown.includes(this.refusal.field ?? '') ? this.#says() : '';
  }

  async act(command: Command, said?: string): Promise<Outcome | null> {
    this.busy = true;
    try {
      const outcome = await desk.act(command, said);
      this.refusal = null;
      return outcome;
    } catch (thrown) {
      this.refusal = asRefusal(thrown);
      this.#refused = this.#standing;
      void tick().then(showRefused);
      return null;
    } finally {
      this.busy = false;
    }
  }
}

/** Brings the refusal into view, and the keyboard to its field. */
function showRefused() {
  const within = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document;
  const alert = within.querySelector('.bad[role="alert"]');
  const field = alert?.closest('.field')?.querySelector<HTMLElement>('input, textarea, button');
  field?.focus({ preventScroll: true });
  (field ?? alert)?.scrollIntoView({ block: 'center' });
}

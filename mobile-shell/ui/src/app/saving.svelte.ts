// Sends what a form holds through the door and keeps what was refused, field by field. Nothing is stored on a refusal.
import { asRefusal, desk } from './desk.svelte.ts';
import type { Command, Outcome, Refusal } from './wire.ts';

export class Saving {
  busy = $state(false);
  refusal = $state.raw<Refusal | null>(null);

  /** The refusal's sentence when it belongs to this field. */
  at(field: string): string {
    return this.refusal?.field === field ? this.refusal.message : '';
  }

  /** The refusal's sentence when it belongs to none of the fields that the form shows. */
  rest(shown: string[]): string {
    return this.refusal && !shown.includes(this.refusal.field ?? '') ? this.refusal.message : '';
  }

  async act(command: Command, said?: string): Promise<Outcome | null> {
    this.busy = true;
    try {
      const outcome = await desk.act(command, said);
      this.refusal = null;
      return outcome;
    } catch (thrown) {
      this.refusal = asRefusal(thrown);
      return null;
    } finally {
      this.busy = false;
    }
  }
}

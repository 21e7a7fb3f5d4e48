// A paint job while it is planned: the order of its coats, what it is on, how much it is. What is changed in it is kept as
// a draft until the job is begun.
import { Drafted, draftedPlace } from '../../../../app/forms/drafted.svelte.ts';
import type { Layer, Process, ProcessStep, Product } from '../../../../door/wire.ts';
import { choices } from '../../../../words/index.ts';

const NOTHING: Process = { title: '', part: 'other', steps: [], surfaces: [] };
/** Name of the draft of the coat that is open. */
export const COAT = 'coats.coat';

export class CoatsPlan {
  /** The job whose coats they are, by its id; without one the door finds it. */
  readonly #job: string | null;
  readonly #draft = new Drafted<{ plan: Process; chosen: string | null }>();
  readonly plan = $derived<Process>($state.snapshot(this.#draft.value?.plan) ?? NOTHING);
  /** Which coat is open; one past the last is a new one. The one that was open at a reload opens again. */
  open = $state(draftedPlace(COAT));

  constructor(job: string | null = null) {
    this.#job = job;
  }

  /** Title of the usual order that it began with. */
  get chosen(): string | null {
    return this.#draft.value?.chosen ?? null;
  }

  /** What stands there before anything is chosen; a draft goes before it. `chosen` is the usual order that it is, if any. */
  suggest(order: Process, chosen: string | null = order.title) {
    this.#draft.fill(this.#job ? `coats.${this.#job}` : 'coats', { plan: order, chosen });
  }

  /** Begins anew with one of the usual orders; what was measured stays. */
  begin(order: Process) {
    if (this.#draft.value) this.#draft.value.chosen = order.title;
    this.put({ ...order, surfaces: this.plan.surfaces });
  }

  put(change: Partial<Process>) {
    if (this.#draft.value) this.#draft.value.plan = { ...this.plan, ...change };
  }

  /** The job is begun: the next plan starts afresh. */
  begun() {
    this.#draft.done();
  }

  /** Puts a step in its place, or behind the last. A can that was changed is changed for every coat of it. */
  keep(at: number, step: ProcessStep, can: string | null) {
    const product = step.product ?? null;
    const steps = [...this.plan.steps.slice(0, at), step, ...this.plan.steps.slice(at + 1)];
    this.put({ steps: steps.map((each) => (product && can !== null && each.product?.name === can ? { ...each, product } : each)) });
  }

  drop(at: number) {
    this.put({ steps: this.plan.steps.filter((_, each) => each !== at) });
  }

  move(at: number, by: -1 | 1) {
    const steps = [...this.plan.steps];
    const [step] = steps.splice(at, 1);
    if (step) steps.splice(at + by, 0, step);
    this.put({ steps });
  }
}

const LAYER_OF: Partial<Record<Product['product'], Layer>> = { primer: 'base', rustConverter: 'base', epoxy: 'base', clear: 'clear' };

/** A coat to start from. */
export function coatOf(product: Product | undefined): ProcessStep {
  return { name: '', layer: (product && LAYER_OF[product.product]) ?? 'colour', product };
}

export const layers = choices('layer');

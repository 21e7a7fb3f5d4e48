// A paint job while it is planned: the order of its coats, what it is on, how much it is. What is changed in it is kept as
// a draft until the job is begun.
import { draftOf, dropDraft, keepDraft } from '../../app/drafts.ts';
import type { Layer, Process, ProcessStep, Product } from '../../app/wire.ts';
import { words } from '../../words.ts';

const NOTHING: Process = { title: '', part: 'other', steps: [], surfaces: [] };

const FORM = 'coats';

interface Draft {
  plan: Process;
  chosen: string;
}

function fits(kept: unknown): kept is Draft {
  const { plan, chosen } = (kept ?? {}) as Partial<Draft>;
  return typeof chosen === 'string' && typeof plan?.title === 'string' && Array.isArray(plan.steps) && Array.isArray(plan.surfaces);
}

export class CoatsPlan {
  readonly #kept = draftOf(FORM, fits);
  plan = $state.raw<Process>(this.#kept?.plan ?? NOTHING);
  /** Title of the usual order that it began with. */
  chosen = $state<string | null>(this.#kept?.chosen ?? null);

  /** What stands there before anything is chosen; a draft goes before it. */
  suggest(order: Process) {
    if (this.chosen !== null) return;
    this.chosen = order.title;
    this.plan = order;
  }

  /** Begins anew with one of the usual orders; what was measured stays. */
  begin(order: Process) {
    this.chosen = order.title;
    this.put({ ...order, surfaces: this.plan.surfaces });
  }

  put(change: Partial<Process>) {
    this.plan = { ...this.plan, ...change };
    keepDraft(FORM, { plan: this.plan, chosen: this.chosen });
  }

  /** The job is begun: the next plan starts afresh. */
  begun() {
    dropDraft(FORM);
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

export const layers = (Object.keys(words.layer) as Layer[]).map((value) => ({ value, word: words.layer[value] }));

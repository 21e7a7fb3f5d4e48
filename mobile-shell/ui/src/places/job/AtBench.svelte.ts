// One step at a time: which one is shown, and which ones are done. Turning a page marks nothing.
import { desk } from '../../app/asking/desk.svelte.ts';
import type { Job } from '../../door/wire.ts';
import { t } from '../../words/index.ts';

export class BenchWalk {
  readonly id: string;
  #shown = $state<number | null>(null);
  busy = $state(false);

  constructor(id: string) {
    this.id = id;
  }

  /** The step that is shown, from 0; the number of steps itself is the page after the last one. At first that is the first one to do. */
  at(job: Job): number {
    return Math.min(this.#shown ?? job.stepsDone, job.steps.length);
  }

  async begin(job: Job) {
    // From here on the page stays where it is, whatever is ticked off elsewhere.
    this.#shown ??= this.at(job);
    if (job.state === 'open') await desk.tryAct({ kind: 'beginJob', id: this.id });
  }

  back(job: Job) {
    this.#shown = Math.max(0, this.at(job) - 1);
  }

  next(job: Job) {
    this.#shown = Math.min(job.steps.length, this.at(job) + 1);
  }

  /** The step that is shown is done, and with it those before; then the next one is shown. */
  async markDone(job: Job) {
    const at = this.at(job);
    const from = job.stepsDone + 1;
    if (at >= job.steps.length || at < job.stepsDone) return;
    const said = from === at + 1 ? t('bench-marked', { step: at + 1 }) : t('bench-marked-more', { from, to: at + 1 });
    if (await this.#tick(at + 1, said)) this.#shown = at + 1;
  }

  /** The step that is shown is not done after all, and so are those after it. */
  async unmark(job: Job) {
    const at = this.at(job);
    if (at >= job.stepsDone) return;
    const to = job.stepsDone;
    await this.#tick(at, to === at + 1 ? t('bench-unmarked', { step: to }) : t('bench-unmarked-more', { from: at + 1, to }));
  }

  async #tick(stepsDone: number, said: string): Promise<boolean> {
    if (this.busy) return false;
    this.busy = true;
    const outcome = await desk.tryAct({ kind: 'tickStep', id: this.id, stepsDone }, said);
    this.busy = false;
    return outcome !== null;
  }
}

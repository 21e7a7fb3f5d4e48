// One step at a time: which one is shown, what is ticked off, and what follows the last one.
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

  /** The step that is shown, from 0; the number of steps itself is the page after the last one. */
  at(job: Job): number {
    const first = job.stepsDone >= job.steps.length && job.steps.length > 0 ? job.steps.length : job.stepsDone;
    return Math.min(this.#shown ?? first, job.steps.length);
  }

  async begin(job: Job) {
    if (job.state === 'open') await desk.tryAct({ kind: 'beginJob', id: this.id });
  }

  back(job: Job) {
    this.#shown = Math.max(0, this.at(job) - 1);
  }

  async next(job: Job) {
    const at = this.at(job);
    if (this.busy || at >= job.steps.length) return;
    this.busy = true;
    const done = at + 1;
    if (done <= job.stepsDone || (await desk.tryAct({ kind: 'tickStep', id: this.id, stepsDone: done }))) this.#shown = done;
    this.busy = false;
  }

  async finish(job: Job): Promise<boolean> {
    return (await desk.tryAct({ kind: 'finishJob', id: this.id }, t('job-finished', { title: job.title }))) !== null;
  }
}

// What the job form holds until it is saved.
import { route, to } from '../../app/route.svelte.ts';
import { Saving } from '../../app/saving.svelte.ts';
import { blankJob } from '../bike/blank.ts';
import type { Job } from '../../app/wire.ts';
import { words } from '../../words.ts';

export type WaitKind = 'none' | 'hours' | 'cure';

export class JobEntry {
  job = $state<Job>(blankJob(0));
  ready = $state(false);
  waitKind = $state<WaitKind>('none');
  readonly saving = new Saving();
  readonly #id: string | undefined;

  constructor(id: string | undefined) {
    this.#id = id;
    this.ready = id === undefined;
  }

  /** Fills the form once; what somebody types is not overwritten by an answer that comes later. */
  fill(job: Job) {
    if (this.ready) return;
    this.job = structuredClone(job);
    this.waitKind = job.wait ? (job.wait.product ? 'cure' : 'hours') : 'none';
    this.ready = true;
  }

  setWait(kind: WaitKind) {
    const name = this.job.wait?.name ?? '';
    this.waitKind = kind;
    if (kind === 'none') this.job.wait = null;
    else if (kind === 'hours') this.job.wait = { ...this.job.wait, name, hours: this.job.wait?.hours ?? 24, product: null };
    else this.job.wait = { ...this.job.wait, name, hours: null, product: this.job.wait?.product ?? null };
  }

  async save() {
    const job = $state.snapshot(this.job);
    if (this.#id === undefined) {
      const done = await this.saving.act({ kind: 'addJob', job }, words.jobForm.added(job.title.trim()));
      if (done) route.replace(done.made ? to('plan', 'job', done.made) : '#/plan');
    } else if (await this.saving.act({ kind: 'changeJob', id: this.#id, job }, words.jobForm.saved)) {
      route.up(to('plan', 'job', this.#id));
    }
  }
}

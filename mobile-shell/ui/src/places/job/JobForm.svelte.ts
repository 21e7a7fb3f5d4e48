// What the job form holds until it is saved.
import { route, to } from '../../app/route.svelte.ts';
import { Drafted } from '../../app/forms/drafted.svelte.ts';
import { Saving } from '../../app/forms/saving.svelte.ts';
import { blankJob } from '../../app/forms/blank.ts';
import type { Job } from '../../door/wire.ts';
import { t } from '../../words/index.ts';

export type WaitKind = 'none' | 'hours' | 'cure';

export class JobEntry {
  readonly draft = new Drafted<Job>();
  readonly saving = new Saving(() => this.draft.value);
  readonly #id: string | undefined;

  constructor(id: string | undefined) {
    this.#id = id;
  }

  /** A job that is there, or a new one of this bike. */
  fill(bike: string, job: Job | undefined) {
    if (this.#id === undefined) this.draft.fill(`job.new.${bike}`, blankJob(0));
    else if (job) this.draft.fill(`job.${this.#id}`, job);
  }

  get waitKind(): WaitKind {
    const wait = this.draft.value?.wait;
    if (!wait) return 'none';
    return wait.product || wait.hours == null ? 'cure' : 'hours';
  }

  setWait(kind: WaitKind) {
    const job = this.draft.value;
    if (!job) return;
    const name = job.wait?.name ?? '';
    if (kind === 'none') job.wait = null;
    else if (kind === 'hours') job.wait = { ...job.wait, name, hours: job.wait?.hours ?? 24, product: null };
    else job.wait = { ...job.wait, name, hours: null, product: job.wait?.product ?? null };
  }

  async save() {
    const job = $state.snapshot(this.draft.value);
    if (!job) return;
    if (this.#id === undefined) {
      const done = await this.saving.act({ kind: 'addJob', job }, t('job-form-added', { title: job.title.trim() }));
      if (!done) return;
      this.draft.done();
      route.replace(done.made ? to('plan', 'job', done.made) : '#/plan');
    } else if (await this.saving.act({ kind: 'changeJob', id: this.#id, job }, t('job-form-saved'))) {
      this.draft.done();
      route.up(to('plan', 'job', this.#id));
    }
  }
}

// The guided entry: the bike is started with its first page; the gears are added to it. A reload loses neither page.
import { desk } from '../../app/asking/desk.svelte.ts';
import { Drafted } from '../../app/forms/drafted.svelte.ts';
import { keeping } from '../../app/device/keeping.svelte.ts';
import { route } from '../../app/route.svelte.ts';
import { Saving } from '../../app/forms/saving.svelte.ts';
import { blankDrive } from '../../app/forms/blank.ts';
import type { Drive, Identity } from '../../door/wire.ts';
import { t } from '../../words/index.ts';

export class StartEntry {
  readonly #identity = new Drafted<Identity>();
  readonly #drive = new Drafted<Drive>();
  readonly saving = new Saving(() => (this.step === 1 ? this.identity : this.drive));

  constructor() {
    this.#identity.fill('start', { name: '', invented: false });
    this.#drive.fill('start.gears', blankDrive());
  }

  /** The address says which page it is. */
  get step(): 1 | 2 {
    return route.query.has('gears') ? 2 : 1;
  }
  get identity(): Identity {
    return this.#identity.value ?? { name: '', invented: false };
  }
  get drive(): Drive {
    return this.#drive.value ?? blankDrive();
  }

  async toGears() {
    const identity = { ...$state.snapshot(this.identity), model: this.identity.model?.trim() || null };
    if (!(await this.saving.act({ kind: 'startBike', identity }))) return;
    this.#identity.done();
    // Gears that were typed and left for another bike are not this one's.
    this.#drive.discard();
    void keeping.askFirst();
    route.replace('#/start/own?gears');
    scrollTo(0, 0);
  }

  async finish() {
    if (await this.saving.act({ kind: 'recordDrive', side: 'standard', drive: $state.snapshot(this.drive) })) this.skip();
  }

  skip() {
    this.#drive.done();
    const name = this.identity.name.trim();
    if (name) desk.say(t('start-started', { name }));
    route.go('#/today');
  }
}

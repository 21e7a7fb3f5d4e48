// The guided entry: the bike is started with its first page, so that nothing typed is lost; the gears are added to it.
import { desk } from '../../app/desk.svelte.ts';
import { keeping } from '../../app/keeping.svelte.ts';
import { route } from '../../app/route.svelte.ts';
import { Saving } from '../../app/saving.svelte.ts';
import { blankDrive } from '../bike/blank.ts';
import type { Drive, Identity } from '../../app/wire.ts';
import { words } from '../../words.ts';

export class StartEntry {
  step = $state<1 | 2>(1);
  identity = $state<Identity>({ name: '', invented: false });
  drive = $state<Drive>(blankDrive());
  readonly saving = new Saving();
  #started = false;

  async toGears() {
    const identity = { ...$state.snapshot(this.identity), model: this.identity.model?.trim() || null };
    const done = await this.saving.act(this.#started ? { kind: 'describeBike', identity } : { kind: 'startBike', identity });
    if (!done) return;
    this.#started = true;
    void keeping.askFirst();
    this.step = 2;
    scrollTo(0, 0);
  }

  async finish() {
    if (await this.saving.act({ kind: 'recordDrive', side: 'standard', drive: $state.snapshot(this.drive) })) this.skip();
  }

  skip() {
    desk.say(words.start.started(this.identity.name.trim()));
    route.go('#/today');
  }
}

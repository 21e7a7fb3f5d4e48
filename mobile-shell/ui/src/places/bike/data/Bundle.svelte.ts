// Bundles out and in: what is going on, what came of it, and the offer to add another bike as a second one.
import { asRefusal, desk } from '../../../app/asking/desk.svelte.ts';
import { fromBase64, save, toBase64 } from '../../../app/device/files.ts';
import { keeping } from '../../../app/device/keeping.svelte.ts';
import type { Received, Refusal } from '../../../door/wire.ts';
import { t } from '../../../words/index.ts';

export class BundleDesk {
  saving = $state(false);
  reading = $state(false);
  saved = $state('');
  received = $state.raw<Received | null>(null);
  refusal = $state.raw<Refusal | null>(null);
  #last = '';

  get busy(): boolean {
    return this.saving || this.reading;
  }

  async save() {
    this.saving = true;
    this.saved = '';
    try {
      const sheet = await desk.ask<'bundle'>({ kind: 'bundle' });
      const name = await save(sheet.fileName, fromBase64(sheet.bundle), 'application/vnd.sqlite3');
      if (name !== null) await desk.act({ kind: 'noteExport' });
      this.saved = name === null ? t('bundle-left') : t('bundle-saved', { name, changes: sheet.changes });
    } catch (thrown) {
      this.saved = asRefusal(thrown).message;
    } finally {
      this.saving = false;
    }
  }

  async receive(file: File) {
    this.#last = toBase64(new Uint8Array(await file.arrayBuffer()));
    await this.#take(false);
  }

  async asSecond() {
    await this.#take(true);
  }

  async #take(asSecondBike: boolean) {
    this.reading = true;
    this.refusal = null;
    this.received = null;
    try {
      const outcome = await desk.act({ kind: 'receiveBundle', bundle: this.#last, asSecondBike });
      this.received = outcome.received ?? null;
      void keeping.askFirst();
    } catch (thrown) {
      this.refusal = asRefusal(thrown);
    } finally {
      this.reading = false;
    }
  }
}

// How the browser keeps the data: asked for once, shown plainly.

class Keeping {
  persisted = $state<boolean | null>(null);
  usedBytes = $state<number | null>(null);
  roomBytes = $state<number | null>(null);
  refused = $state(false);

  async look() {
    if (!navigator.storage) return;
    this.persisted = (await navigator.storage.persisted?.()) ?? null;
    const estimate = await navigator.storage.estimate?.();
    this.usedBytes = estimate?.usage ?? null;
    this.roomBytes = estimate?.quota ?? null;
  }

  /** Asks once, when the first data of the person's own is there to lose. Browsers that decide by themselves do so unseen. */
  async askFirst() {
    await this.look();
    if (this.persisted === false) await this.ask();
  }

  /** Asks the browser not to clear the data when room is short. */
  async ask() {
    if (!navigator.storage?.persist) return;
    this.persisted = await navigator.storage.persist();
    this.refused = !this.persisted;
  }
}

export const keeping = new Keeping();

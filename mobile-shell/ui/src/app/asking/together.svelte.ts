// Changes set beside each other to be tried on the bike together, before any of them is bought: other sprockets, other
// lamps, another brake. They are only tried: nothing of it is stored.
import type { Command, Proposal } from '../../door/wire.ts';

export interface Try {
  /** What it replaces: the same key put again takes the place of the earlier one. */
  key: string;
  name: string;
  proposals: Proposal[];
  /** What *Fit it* does, in order. */
  fit: Command[];
}

class Together {
  #tries = $state.raw<Try[]>([]);

  get all(): Try[] {
    return this.#tries;
  }

  others(key: string): Try[] {
    return this.#tries.filter((each) => each.key !== key);
  }

  put(one: Try) {
    this.#tries = [...this.others(one.key), one];
  }

  drop(key: string) {
    this.#tries = this.others(key);
  }

  clear() {
    this.#tries = [];
  }
}

export const together = new Together();

// A stand-in for the door. It notes what is asked and done, and answers when and what a test says.
import type { Door, DoorState } from '../src/door/index.ts';
import type { Command, Outcome, Query, Refusal } from '../src/door/wire.ts';

/** A question or command that waits for its answer. */
export interface Call<Asked> {
  asked: Asked;
  answer: (given: unknown) => void;
  refuse: (refusal: Refusal) => void;
}

class StandIn {
  asks: Call<Query>[] = [];
  acts: Call<Command>[] = [];
  #stale: (kinds: string[]) => void = () => {};

  readonly opened = (tell: (state: DoorState) => void = () => {}): Promise<Door> => {
    tell({ kind: 'open' });
    return Promise.resolve({
      ask: (query) => this.#wait(this.asks, query),
      act: (command) => this.#wait<Command, Outcome>(this.acts, command),
      onStale: (listener) => {
        this.#stale = listener;
        return () => {};
      },
    });
  };

  /** Another tab changed something. */
  spoil(kinds: string[]) {
    this.#stale(kinds);
  }

  forget() {
    this.asks = [];
    this.acts = [];
  }

  #wait<Asked, Answer>(calls: Call<Asked>[], asked: Asked): Promise<Answer> {
    return new Promise((answered, refused) => {
      // eslint-disable-next-line @typescript-eslint/prefer-promise-reject-errors -- all that pages see of a refusal
      calls.push({ asked, answer: (given) => answered(given as Answer), refuse: (refusal) => refused(refusal) });
    });
  }
}

export const door = new StandIn();

/** What a command comes back with that changed one fact. */
export const done = (batch: string, stale: string[] = []): Outcome => ({ batch, changes: 1, stale, notes: [] });

export const refusal = (field: string | null, message: string): Refusal => ({ code: 'outOfRange', message, field });

// The desk between the pages and the door: asks, acts, tells pages what went stale, and remembers how to undo.
import type { Door, DoorRefusal, DoorState } from '../../door/index.ts';
import { Refused } from '../../door/refused.ts';
import { forgetAnswers, takeAnswer, takeDoor } from './early.ts';
import type { Command, Outcome, Query, QueryMap, Refusal } from '../../door/wire.ts';
import { together } from './together.svelte.ts';
import { worded } from '../../words/messages.ts';
import { inWords } from './trouble.ts';
import { t } from '../../words/index.ts';

export type Kind = Query['kind'];
export type AskOf<K extends Kind> = Extract<Query, { kind: K }>;

/** How far the door is. `elsewhere`: another tab holds the data and does not answer. */
export type Standing = 'opening' | 'open' | 'elsewhere' | 'broken';

export interface Toast {
  text: string;
  /** The batches that *Undo* takes back, the last one first; empty when there is nothing to take back. */
  batches: string[];
  bad: boolean;
}

/** Whatever was thrown, as a refusal that can be shown, in words. */
export function asRefusal(thrown: unknown): Refusal {
  const refusal = thrown instanceof Refused ? thrown.refusal : thrown;
  if (refusal && typeof refusal === 'object' && 'code' in refusal && 'message' in refusal) {
    const { trouble, code } = refusal as DoorRefusal;
    return trouble ? { code, message: inWords(trouble), field: null } : (worded(refusal) as Refusal);
  }
  return { code: 'storage', message: thrown instanceof Error ? thrown.message : String(thrown), field: null };
}

/** Leaves the time of a call in the browser's own timeline, the last one of each kind. */
function time(name: string, start: number) {
  performance.clearMeasures(name);
  performance.measure(name, { start });
}

/** Commands after which another bike may be open. */
const OPENS_ANOTHER: Command['kind'][] = ['openBike', 'startBike', 'loadDemo', 'receiveBundle'];

class Desk {
  standing = $state<Standing>('opening');
  /** The door was open once: pages stay on the screen while another tab holds the data. */
  wasOpen = $state(false);
  /** Why the door could not be opened. */
  trouble = $state('');
  toast = $state.raw<Toast | null>(null);
  /** Counts up for a query when its answer may have changed; pages that read it ask again. */
  #stale = $state<Partial<Record<Kind, number>>>({});
  #door: Promise<Door> | null = null;
  #asking = 0;

  async open() {
    this.#door = takeDoor((state) => this.#hear(state));
    try {
      const door = await this.#door;
      door.onStale((stale) => this.spoil(stale));
    } catch (thrown) {
      this.#hear({ kind: 'broken', refusal: asRefusal(thrown) });
    }
  }

  #hear(state: DoorState) {
    this.standing = state.kind;
    if (state.kind === 'open') this.wasOpen = true;
    if (state.kind === 'broken') this.trouble = asRefusal(state.refusal).message;
  }

  /** How often the answers to a kind of query went stale; read it to ask again when they do. */
  stale(kind: Kind): number {
    return this.#stale[kind] ?? 0;
  }

  async ask<K extends Kind>(query: AskOf<K>): Promise<QueryMap[K]> {
    const door = await this.#ready();
    this.#count(1);
    const start = performance.now();
    try {
      return worded(await (takeAnswer(query) ?? door.ask(query))) as QueryMap[K];
    } finally {
      this.#count(-1);
      time(`ask ${query.kind}`, start);
    }
  }

  /** Carries a command out. `said` is shown with *Undo*; without it nothing is shown. A refusal is thrown. */
  async act(command: Command, said?: string): Promise<Outcome> {
    const door = await this.#ready();
    forgetAnswers();
    const start = performance.now();
    const outcome = worded(await door.act(command)) as Outcome;
    time(`act ${command.kind}`, start);
    this.spoil(outcome.stale);
    // What was tried on one bike is not carried to another.
    if (OPENS_ANOTHER.includes(command.kind)) together.clear();
    // What else happened stands behind it: nothing changes unsaid.
    if (said) this.say([said, ...outcome.notes].join(' '), outcome.changes > 0 ? [outcome.batch] : []);
    return outcome;
  }

  /** Like `act` where no field can be to blame: what was refused is said in the toast. */
  async tryAct(command: Command, said?: string): Promise<Outcome | null> {
    try {
      return await this.act(command, said);
    } catch (thrown) {
      this.toast = { text: asRefusal(thrown).message, batches: [], bad: true };
      return null;
    }
  }

  /** Why a query has no answer; nothing when it has one. */
  async whyNot<K extends Kind>(query: AskOf<K>): Promise<Refusal | null> {
    return this.ask<K>(query).then(
      () => null,
      (thrown: unknown) => asRefusal(thrown),
    );
  }

  async undo(batches: string[]) {
    this.toast = null;
    for (const batch of [...batches].reverse()) {
      if (!(await this.tryAct({ kind: 'undo', batch }))) return;
    }
    this.say(t('toast-undone'));
  }

  say(text: string, batches: string[] = []) {
    this.toast = { text, batches, bad: false };
  }

  /** Says on the page whether an answer is under way, for whoever has to wait for it: tests, pictures, printing. */
  #count(by: 1 | -1) {
    this.#asking += by;
    document.documentElement.dataset.asking = String(this.#asking);
  }

  /** Marks answers as stale; pages that show them ask again. */
  spoil(stale: string[]) {
    forgetAnswers();
    for (const kind of stale) this.#stale[kind as Kind] = (this.#stale[kind as Kind] ?? 0) + 1;
  }

  #ready(): Promise<Door> {
    return this.#door ?? Promise.reject(new Error(t('boot-not-open')));
  }
}

export const desk = new Desk();

// What a backend of the door is, and what page and worker say to each other.
import type { Refusal } from '../../../../bindings/generated/typescript/door.ts';

/** What goes wrong in the door itself: it has no words of its own, the pages say it. What the core refuses comes with its sentence. */
export type Trouble = { kind: 'noFiles' } | { kind: 'notLoaded'; why: string } | { kind: 'stopped'; place: string } | { kind: 'interrupted' };

export interface DoorRefusal extends Refusal {
  trouble?: Trouble;
}

export const troubled = (trouble: Trouble): DoorRefusal => ({ code: 'storage', message: trouble.kind, field: null, trouble });

/**
 * How far the door is. `elsewhere`: another tab holds the data and does not answer; calls wait and are sent again when it
 * does, or when this tab gets hold of the data.
 */
export type DoorState = { kind: 'opening' } | { kind: 'open' } | { kind: 'elsewhere' } | { kind: 'broken'; refusal: DoorRefusal };

export interface Listeners {
  state(state: DoorState): void;
  /** Another tab changed something; these queries may answer differently now. */
  stale(kinds: string[]): void;
}

export interface Backend {
  /** Sends a call as JSON. The answer is JSON; a refusal is thrown as its JSON text. */
  send(kind: 'act' | 'ask', json: string): Promise<string>;
  /** Lets go of everything, for good. */
  close(): void;
}

/** The first message to a worker: with what it opens the data. */
export interface Begin {
  kind: 'begin';
  /** Where the texts of jobs, packs and tables lie in the language of the pages; none where that is English. */
  content: string | null;
}

/** A call on its way. `id` pairs it with its answer. */
export interface Call {
  id: string;
  kind: 'act' | 'ask';
  json: string;
}

/** The answer to a call, or its refusal, as JSON. */
export interface Answer {
  id: string;
  ok: boolean;
  json: string;
}

/** What the worker tells its page. */
export type FromWorker =
  | { say: 'state'; state: DoorState }
  | { say: 'answer'; answer: Answer }
  | { say: 'stale'; kinds: string[] }
  /** The program behind the door stopped at a bug of its own; the worker must be made anew. */
  | { say: 'fault' };

// The one door of the pages: `act` changes, `ask` answers. Behind it is a worker with SQLite in the browser, and the
// native program in a window of its own; the pages cannot tell which.
import type { ActCall, AskCall, Command, Outcome, Query, QueryMap, Refusal } from '../../../../bindings/generated/typescript/door.ts';
import { browser } from './browser.ts';
import type { Backend, DoorState, Listeners } from './backend.ts';
import { moment } from './moment.ts';
import { Refused } from './refused.ts';

export type { DoorRefusal, DoorState, Trouble } from './backend.ts';
export { Refused } from './refused.ts';

type Kind = Query['kind'];

/** The backend that was opened last: a page has one at a time. */
let current: Backend | null = null;

export interface Door {
  /** Does what the mechanic did. What it returns is on disk. A refusal is thrown as `Refused`; then nothing was stored. */
  act(command: Command): Promise<Outcome>;
  /** Answers a question. */
  ask<K extends Kind>(query: Extract<Query, { kind: K }>): Promise<QueryMap[K]>;
  /** Tells which answers may be different because another tab changed something. Returns how to stop. */
  onStale(tell: (kinds: string[]) => void): () => void;
}

/**
 * Opens the door, anew if it was open. The promise holds once calls are answered, and fails with `Refused` where that
 * cannot be. While another tab holds the data and does not answer it waits; `tell` hears of that, also later. `early` is given `ask` at once:
 * what it asks waits for the data, and is answered as soon as there is any.
 * `content` tells where the texts of jobs, packs and tables lie in another language than English.
 */
export async function openDoor(
  tell: (state: DoorState) => void = () => {},
  early: (ask: Door['ask']) => void = () => {},
  content: string | null = null,
): Promise<Door> {
  current?.close();
  const stale = new Set<(kinds: string[]) => void>();
  const { backend, first } = await start(tell, (kinds) => stale.forEach((listener) => listener(kinds)), content);
  current = backend;
  const ask: Door['ask'] = (query) => send(backend, 'ask', { moment: moment(), query } satisfies AskCall);
  early(ask);
  await first;
  return {
    act: (command) => send<ActCall, Outcome>(backend, 'act', { id: freshMark(), moment: moment(), command }),
    ask,
    onStale: (listener) => {
      stale.add(listener);
      return () => stale.delete(listener);
    },
  };
}

async function start(
  tell: (state: DoorState) => void,
  stale: (kinds: string[]) => void,
  content: string | null,
): Promise<{ backend: Backend; first: Promise<void> }> {
  let settle: (state: DoorState) => void = () => {};
  const first = new Promise<void>((open, broken) => {
    settle = (state) => {
      if (state.kind === 'open') open();
      if (state.kind === 'broken') broken(new Refused(state.refusal));
    };
  });
  // Whoever waits for it hears of a failure; until then it is no unhandled one.
  first.catch(() => {});
  const listeners: Listeners = {
    state: (state) => {
      settle(state);
      tell(state);
    },
    stale,
  };
  const inWindow = '__TAURI_INTERNALS__' in window;
  const backend = inWindow ? (await import('./native.ts')).native(listeners, content) : browser(listeners, content);
  return { backend, first };
}

async function send<Call, Answer>(backend: Backend, kind: 'act' | 'ask', call: Call): Promise<Answer> {
  let answer: string;
  try {
    answer = await backend.send(kind, JSON.stringify(call));
  } catch (thrown) {
    throw new Refused(asRefusal(thrown));
  }
  return JSON.parse(answer) as Answer;
}

/** Backends throw a refusal as its JSON; anything else is trouble of the host. */
function asRefusal(thrown: unknown): Refusal {
  if (typeof thrown === 'string') {
    try {
      return JSON.parse(thrown) as Refusal;
    } catch {
      return { code: 'storage', message: thrown, field: null };
    }
  }
  return { code: 'storage', message: thrown instanceof Error ? thrown.message : String(thrown), field: null };
}

/** A call's own mark: sent twice under it, a command is done once. */
function freshMark(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

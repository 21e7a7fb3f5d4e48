// Several tabs, one database. A Web Lock says whose it is; the holder serves the others over a BroadcastChannel. When the
// holder goes, the browser gives the lock to the next tab; what the others still wait for they send to that one again.
import type { Outcome } from '../../../../bindings/generated/typescript/door.ts';
import type { Answer, Call, DoorState } from './backend.ts';
import * as database from './database.ts';

const LOCK = 'layshaft.database';
/** Tabs with different versions of the program share the lock, not the channel: they might not understand each other. */
const CHANNEL = `layshaft.door ${database.VERSION}`;

/** So long may the owner be silent, in milliseconds, before the person is told that another tab does not answer. */
const PATIENCE = 4000;

type Between =
  /** Is there an owner? */
  | { say: 'seek' }
  /** I own the database and answer. */
  | { say: 'own'; owner: string }
  | { say: 'call'; tab: string; call: Call }
  | { say: 'answer'; tab: string; answer: Answer }
  /** What `tab` did makes these answers old for everyone else. */
  | { say: 'stale'; tab: string; kinds: string[] };

export interface TabListeners {
  state(state: DoorState): void;
  stale(kinds: string[]): void;
  answer(answer: Answer): void;
  fault(): void;
}

export class Tabs {
  readonly #tab = crypto.randomUUID();
  readonly #channel = new BroadcastChannel(CHANNEL);
  readonly #waiting = new Map<string, Call>();
  readonly #listeners: TabListeners;
  #own = false;
  /** The lock is this tab's, and the database is being opened: the silence is its own. */
  #opening = false;
  #owner: string | null = null;
  #alarm: ReturnType<typeof setTimeout> | null = null;

  constructor(listeners: TabListeners) {
    this.#listeners = listeners;
    this.#channel.onmessage = ({ data }: MessageEvent<Between>) => this.#hear(data);
  }

  /** Gets in line for the database, and looks for a tab that has it. */
  /** Takes part. `content` tells where the texts of the pages' language lie. */
  async join(content: string | null): Promise<void> {
    this.#listeners.state({ kind: 'opening' });
    const owned = navigator.locks.request(LOCK, () => this.#takeOver(content));
    const { held } = await navigator.locks.query();
    if (!this.#own && !this.#opening && held?.some((lock) => lock.name === LOCK)) this.#seek();
    await owned;
  }

  send(call: Call): void {
    if (this.#own) return this.#serve(this.#tab, call);
    this.#waiting.set(call.id, call);
    if (this.#owner) this.#pass(call);
  }

  /** Holds the lock for as long as this worker lives, unless the database cannot be opened: then the next tab may try. */
  async #takeOver(content: string | null): Promise<void> {
    this.#owner = null;
    this.#opening = true;
    this.#quiet();
    try {
      await database.open(content);
    } catch (thrown) {
      return this.#listeners.state({ kind: 'broken', refusal: database.asRefusal(thrown) });
    }
    this.#own = true;
    this.#listeners.state({ kind: 'open' });
    const left = [...this.#waiting.values()];
    this.#waiting.clear();
    left.forEach((call) => this.#serve(this.#tab, call));
    this.#say({ say: 'own', owner: this.#tab });
    await new Promise<never>(() => {});
  }

  #hear(message: Between): void {
    if (this.#own) {
      if (message.say === 'seek') this.#say({ say: 'own', owner: this.#tab });
      if (message.say === 'call') this.#serve(message.tab, message.call);
      return;
    }
    if (message.say === 'own') this.#follow(message.owner);
    if (message.say === 'answer' && message.tab === this.#tab) this.#settle(message.answer);
    if (message.say === 'stale' && message.tab !== this.#tab) this.#listeners.stale(message.kinds);
  }

  /** There is an owner: what waits goes to it, again if another one had it. */
  #follow(owner: string): void {
    const known = this.#owner === owner;
    this.#owner = owner;
    this.#quiet();
    this.#listeners.state({ kind: 'open' });
    if (!known) this.#waiting.forEach((call) => this.#pass(call));
    else if (this.#waiting.size > 0) this.#listen();
  }

  #pass(call: Call): void {
    this.#say({ say: 'call', tab: this.#tab, call });
    this.#listen();
  }

  #settle(answer: Answer): void {
    if (!this.#waiting.delete(answer.id)) return;
    this.#quiet();
    if (this.#waiting.size > 0) this.#listen();
    this.#listeners.answer(answer);
  }

  #seek(): void {
    this.#say({ say: 'seek' });
    this.#listen();
  }

  /** Sees to it that silence is noticed. */
  #listen(): void {
    this.#alarm ??= setTimeout(() => {
      this.#alarm = null;
      this.#listeners.state({ kind: 'elsewhere' });
      this.#owner = null;
      this.#seek();
    }, PATIENCE);
  }

  #quiet(): void {
    if (this.#alarm !== null) clearTimeout(this.#alarm);
    this.#alarm = null;
  }

  /** Answers a call, of this tab or another one. */
  #serve(tab: string, call: Call): void {
    const { answer, fault } = database.answer(call);
    if (tab === this.#tab) this.#listeners.answer(answer);
    else this.#say({ say: 'answer', tab, answer });
    if (call.kind === 'act' && answer.ok) this.#spoil(tab, (JSON.parse(answer.json) as Outcome).stale);
    if (fault) this.#listeners.fault();
  }

  #spoil(tab: string, kinds: string[]): void {
    if (kinds.length === 0) return;
    if (tab !== this.#tab) this.#listeners.stale(kinds);
    this.#say({ say: 'stale', tab, kinds });
  }

  #say(message: Between): void {
    this.#channel.postMessage(message);
  }
}

// The door in the browser, seen from the page: one dedicated worker, calls that wait for their answers, and a new worker
// when the old one is gone. A call that has no answer is sent again; commands carry marks, so they are done once.
import { troubled, type Answer, type Backend, type Begin, type Call, type DoorState, type FromWorker, type Listeners } from './backend.ts';

interface Waiting {
  call: Call;
  answered: (json: string) => void;
  refused: (json: string) => void;
}

export function browser(listeners: Listeners, content: string | null): Backend {
  return new Browser(listeners, content);
}

class Browser implements Backend {
  readonly #listeners: Listeners;
  readonly #content: string | null;
  readonly #waiting = new Map<string, Waiting>();
  readonly #closed = new AbortController();
  #worker: Worker | null = null;
  #calls = 0;
  /** Why there will be no answers, as the JSON of a refusal. */
  #broken: string | null = null;

  constructor(listeners: Listeners, content: string | null) {
    this.#listeners = listeners;
    this.#content = content;
    this.#start();
    const { signal } = this.#closed;
    // A page that the browser puts to sleep must not keep the data from the others.
    addEventListener('pagehide', () => this.#stop(), { signal });
    addEventListener('pageshow', () => this.#start(), { signal });
    document.addEventListener('freeze', () => this.#stop(), { signal });
    document.addEventListener('resume', () => this.#start(), { signal });
  }

  send(kind: 'act' | 'ask', json: string): Promise<string> {
    // eslint-disable-next-line @typescript-eslint/prefer-promise-reject-errors -- a refusal travels as its JSON
    if (this.#broken !== null) return Promise.reject(this.#broken);
    const call: Call = { id: String((this.#calls += 1)), kind, json };
    return new Promise((answered, refused) => {
      this.#waiting.set(call.id, { call, answered, refused });
      this.#worker?.postMessage(call);
    });
  }

  close(): void {
    this.#closed.abort();
    this.#stop();
    this.#giveUp({ kind: 'broken', refusal: troubled({ kind: 'interrupted' }) });
  }

  #start(): void {
    if (this.#worker) return;
    this.#worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    this.#worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.#hear(data);
    this.#worker.onerror = (event) => {
      event.preventDefault();
      this.#hear({ say: 'state', state: { kind: 'broken', refusal: troubled({ kind: 'notLoaded', why: event.message }) } });
    };
    this.#worker.postMessage({ kind: 'begin', content: this.#content } satisfies Begin);
    for (const { call } of this.#waiting.values()) this.#worker.postMessage(call);
  }

  /** Lets go of the data, so that another tab can have it. What waits is sent again after the next start. */
  #stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }

  #hear(message: FromWorker): void {
    if (message.say === 'stale') this.#listeners.stale(message.kinds);
    if (message.say === 'answer') this.#settle(message.answer);
    if (message.say === 'state') {
      if (message.state.kind === 'broken') this.#giveUp(message.state);
      else this.#broken = null;
      this.#listeners.state(message.state);
    }
    if (message.say === 'fault') {
      this.#stop();
      this.#start();
    }
  }

  #settle({ id, ok, json }: Answer): void {
    const call = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (ok) call?.answered(json);
    else call?.refused(json);
  }

  #giveUp({ refusal }: DoorState & { kind: 'broken' }): void {
    const json = JSON.stringify(refusal);
    this.#broken = json;
    this.#waiting.forEach(({ refused }) => refused(json));
    this.#waiting.clear();
  }
}

// A live answer: asked when its query changes, asked again when the answer goes stale. The last good answer stays on
// the page until the next one is there, so that nothing flashes while somebody types.
import { asRefusal, desk, type AskOf, type Kind } from './desk.svelte.ts';
import { clock } from '../time/clock.svelte.ts';
import { settings } from '../settings.svelte.ts';
import type { QueryMap, Refusal } from '../../door/wire.ts';

export interface Live<T, Q = unknown> {
  /** The last good answer. */
  readonly answer: T | undefined;
  /** The query that it answers; a newer one may be under way. */
  readonly answered: Q | undefined;
  /** Why the present query has no answer. */
  readonly refusal: Refusal | null;
  /** The refusal's sentence when it belongs to this field. */
  at: (field: string) => string;
}

/** Queries whose answers move with the clock. */
const TIMED: ReadonlySet<Kind> = new Set(['today', 'plan', 'cure', 'process', 'job']);

/** Asks while the component lives. A query of `null` asks nothing yet. */
export function live<K extends Kind>(kind: K, query: () => Omit<AskOf<K>, 'kind'> | null): Live<QueryMap[K], Omit<AskOf<K>, 'kind'>> {
  let answer = $state.raw<QueryMap[K] | undefined>(undefined);
  let answered = $state.raw<Omit<AskOf<K>, 'kind'> | undefined>(undefined);
  let refusal = $state.raw<Refusal | null>(null);

  $effect(() => {
    const wanted = query();
    if (!wanted || !desk.wasOpen) return;
    desk.stale(kind);
    // Sentences of the core carry quantities, which follow the units that the device shows.
    void settings.units;
    if (TIMED.has(kind)) void clock.minute;
    let wantedStill = true;
    desk.ask({ kind, ...wanted } as unknown as AskOf<K>).then(
      (given) => {
        if (!wantedStill) return;
        answer = given;
        answered = wanted;
        refusal = null;
      },
      (thrown) => {
        if (wantedStill) refusal = asRefusal(thrown);
      },
    );
    return () => {
      wantedStill = false;
    };
  });

  return {
    get answer() {
      return answer;
    },
    get answered() {
      return answered;
    },
    get refusal() {
      return refusal;
    },
    at: (field) => (refusal?.field === field ? refusal.message : ''),
  };
}

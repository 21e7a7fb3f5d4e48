// Opens the door before the pages are even loaded, and asks what the first page will ask anyway: the database opens in
// its worker while the browser still reads the rest of the program.
import { openDoor, type Door, type DoorState } from '../../door/index.ts';
import { contentAddress } from '../../words/spoken.ts';
import { tagAtStart } from '../language.ts';
import { seenAtStart, todayAsk } from '../time/seen.ts';
import type { Query } from '../../door/wire.ts';

let state: DoorState = { kind: 'opening' };
let tell: (state: DoorState) => void = () => {};

const answers = new Map<string, Promise<unknown>>();

/** The time at hand with which the app opens, in minutes. */
export const FIRST_MINUTES = 60;

let begun: () => void = () => {};
/**
 * The data is being opened, or cannot be. A browser starts a worker from the page's own thread: pages that are read before
 * this would only keep it waiting.
 */
export const opening = new Promise<void>((resolve) => (begun = resolve));

function hear(next: DoorState) {
  state = next;
  begun();
  tell(next);
}

const door: Promise<Door> = openDoor(hear, askEarly, contentAddress(tagAtStart()));
// Whoever opens the desk hears of a failure; until then it is no unhandled one.
door.catch(() => {});

/** The door, and from now on each of its states, beginning with the present one. */
export function takeDoor(listener: (state: DoorState) => void): Promise<Door> {
  tell = listener;
  listener(state);
  return door;
}

/** The answer to a query that was asked early. It is given once: afterwards it may be old. */
export function takeAnswer(query: Query): Promise<unknown> | undefined {
  const key = JSON.stringify(query);
  const answer = answers.get(key);
  answers.delete(key);
  return answer;
}

/** Forgets what was asked early: something changed since. */
export function forgetAnswers() {
  answers.clear();
}

function askEarly(ask: Door['ask']) {
  const queries: Query[] = [{ kind: 'tables' }, { kind: 'shelf' }];
  if (/^(#\/?(today)?)?$/.test(location.hash)) queries.push({ kind: 'today', ...todayAsk(FIRST_MINUTES, seenAtStart) });
  for (const query of queries) {
    const answer = ask(query);
    answer.catch(() => {});
    answers.set(JSON.stringify(query), answer);
  }
}

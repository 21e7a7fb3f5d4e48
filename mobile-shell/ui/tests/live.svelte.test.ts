// Answers under way: the newest question holds, whatever overtakes it.
import { flushSync } from 'svelte';
import { afterEach, beforeAll, expect, test, vi } from 'vitest';
import { desk } from '../src/app/asking/desk.svelte.ts';
import { live, type Live } from '../src/app/asking/live.svelte.ts';
import { openDesk, settled } from './desk.ts';
import { done, door, refusal } from './door.ts';

beforeAll(() => openDesk());
let close = () => {};
afterEach(() => close());

/** A page that asks about a chain with so many teeth; none asks nothing. */
function page(first: number | null) {
  let teeth = $state(first);
  let asked!: Live<unknown>;
  close = $effect.root(() => {
    asked = live('gearing', () => (teeth === null ? null : { frontTeeth: teeth }));
  });
  flushSync();
  return {
    asked,
    turn: (to: number) => {
      teeth = to;
      return settled();
    },
  };
}

test('an answer that was overtaken is not shown, whether it comes late or is refused late', async () => {
  const { asked, turn } = page(15);
  await settled();
  await turn(16);
  await turn(17);
  const [slow, refused, quick] = door.asks;
  quick?.answer('of 17');
  await settled();
  expect(asked.answer).toBe('of 17');
  slow?.answer('of 15');
  refused?.refuse(refusal('frontTeeth', 'too late'));
  await settled();
  expect([asked.answer, asked.refusal, asked.answered]).toEqual(['of 17', null, { frontTeeth: 17 }]);
});

test('while what is typed is refused the last good answer stays, and the refusal stands at its field', async () => {
  const { asked, turn } = page(15);
  await settled();
  door.asks[0]?.answer('of 15');
  await settled();
  await turn(999);
  door.asks[1]?.refuse(refusal('frontTeeth', 'at most 40'));
  await settled();
  expect([asked.answer, asked.at('frontTeeth'), asked.at('rearTeeth')]).toEqual(['of 15', 'at most 40', '']);
  await turn(16);
  // Until the next answer is there the refusal holds.
  expect(asked.at('frontTeeth')).toBe('at most 40');
  door.asks[2]?.answer('of 16');
  await settled();
  expect([asked.answer, asked.refusal]).toEqual(['of 16', null]);
});

test('it is asked again when its answer went stale, here or in another tab, and not for others', async () => {
  page(15);
  await settled();
  expect(door.asks).toHaveLength(1);
  const acting = desk.act({ kind: 'undo', batch: 'a' });
  await settled();
  door.acts[0]?.answer(done('b', ['gearing', 'plan']));
  await acting;
  await settled();
  expect(door.asks).toHaveLength(2);
  door.spoil(['brakes']);
  await settled();
  expect(door.asks).toHaveLength(2);
  door.spoil(['gearing']);
  await settled();
  expect(door.asks).toHaveLength(3);
});

test('without a question nothing is asked, and a page that is gone hears of nothing', async () => {
  const { asked, turn } = page(null);
  await settled();
  expect(door.asks).toHaveLength(0);
  await turn(15);
  close();
  door.asks[0]?.answer('of 15');
  await settled();
  expect(asked.answer).toBeUndefined();
});

test('what moves with the clock is asked again each minute, what does not is not', async () => {
  page(15);
  const timed = $effect.root(() => void live('plan', () => ({ days: 1 })));
  await settled();
  const kinds = () => door.asks.map(({ asked }) => asked.kind);
  expect(kinds()).toEqual(['gearing', 'plan']);
  vi.advanceTimersByTime(60_000);
  await settled();
  expect(kinds()).toEqual(['gearing', 'plan', 'plan']);
  timed();
});

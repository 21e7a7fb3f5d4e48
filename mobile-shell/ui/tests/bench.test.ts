// At the bench: turning pages marks nothing, and a mark says what it took with it.
import { beforeAll, expect, test } from 'vitest';
import { desk } from '../src/app/asking/desk.svelte.ts';
import { blankJob } from '../src/app/forms/blank.ts';
import { BenchWalk } from '../src/places/job/AtBench.svelte.ts';
import { openDesk, settled } from './desk.ts';
import { done, door } from './door.ts';

const job = (stepsDone: number) => ({ ...blankJob(1), steps: Array.from({ length: 5 }, () => ({ text: 'Step' })), stepsDone, state: 'begun' as const });

beforeAll(() => openDesk());

/** What was sent, once it is answered. */
async function sent(acting: Promise<void>) {
  await settled();
  const call = door.acts.at(-1);
  call?.answer(done('batch'));
  await acting;
  return call?.asked;
}

test('the page opens at the first step that is not done, and turning it marks nothing', () => {
  const walk = new BenchWalk('a');
  expect([walk.at(job(0)), walk.at(job(2)), walk.at(job(5))]).toEqual([0, 2, 5]);
  walk.next(job(2));
  walk.next(job(2));
  expect(walk.at(job(2))).toBe(4);
  walk.back(job(2));
  expect(walk.at(job(2))).toBe(3);
  expect(door.acts).toEqual([]);
});

test('a step marks those before it and says so; it is unsaid with those after it', async () => {
  const walk = new BenchWalk('a');
  walk.next(job(1));
  walk.next(job(1));
  expect(await sent(walk.markDone(job(1)))).toEqual({ kind: 'tickStep', id: 'a', stepsDone: 4 });
  expect(desk.toast).toMatchObject({ text: 'Steps 2 to 4 are done.', batches: ['batch'] });
  expect(walk.at(job(4))).toBe(4);
  walk.back(job(4));
  expect(await sent(walk.unmark(job(4)))).toEqual({ kind: 'tickStep', id: 'a', stepsDone: 3 });
  expect(desk.toast?.text).toBe('Step 4 is open again.');
  walk.back(job(3));
  expect(await sent(walk.unmark(job(3)))).toEqual({ kind: 'tickStep', id: 'a', stepsDone: 2 });
});

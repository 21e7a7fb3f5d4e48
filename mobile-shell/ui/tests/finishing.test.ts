// What the sheet of a finished job begins with, and what it sends.
import { expect, test } from 'vitest';
import { blankJob } from '../src/app/forms/blank.ts';
import type { PartCard, Product } from '../src/door/wire.ts';
import { finishCommand, freshFinishing, minutesAtBench, partsToFit } from '../src/parts/finish/finishing.ts';

const MINUTE = 60_000;
const liner = { name: 'Liner' } as Product;
const job = { ...blankJob(1), title: 'Line the tank', parts: ['seal', 'funnel', 'tap'] };
const part = (id: string, more: object = {}): PartCard => ({ id, part: { title: id, state: 'here', ...more } });

test('the time at the bench is offered in steps of five minutes, and never more than a day', () => {
  const begun = (minutes: number) => minutesAtBench({ ...job, begunMs: 0 }, minutes * MINUTE);
  expect([begun(2), begun(93), begun(1440)]).toEqual([5, 95, 1440]);
  expect([begun(0.5), begun(1441), minutesAtBench(job, MINUTE)]).toEqual([null, null, null]);
});

test('parts of the job that are not fitted yet are offered, tools and other parts are not', () => {
  const parts = [part('seal'), part('funnel', { tool: true }), part('tap', { state: 'fitted' }), part('horn')];
  expect(partsToFit(job, parts).map(({ id }) => id)).toEqual(['seal']);
});

test('a job with a coat offers its clock as started, one without offers none', () => {
  expect(freshFinishing(job, [liner], 0)).toMatchObject({ clock: true, product: 'Liner', minutes: null });
  expect(freshFinishing(job, [], 0)).toMatchObject({ clock: false, product: '' });
});

test('what is left out is sent as not known', () => {
  const plain = { ...freshFinishing(job, [liner], 0), clock: false, note: '  ' };
  expect(finishCommand('a', plain, [liner], [])).toEqual({ kind: 'finishJob', id: 'a', startClock: null, partsFitted: [], minutesTaken: null, note: null });
});

test('what is said goes in one command; a part that is gone meanwhile does not', () => {
  const said = { ...freshFinishing(job, [liner], 0), fitted: ['seal', 'gone'], minutes: 40, note: ' Good. ', inHouse: true };
  expect(finishCommand('a', said, [liner], [part('seal')])).toEqual({
    kind: 'finishJob',
    id: 'a',
    startClock: { product: liner, startedMs: null, place: 'house' },
    partsFitted: ['seal'],
    minutesTaken: 40,
    note: 'Good.',
  });
});

// What the sheet of a finished job begins with, and what it sends.
import { expect, test } from 'vitest';
import { blankJob } from '../src/app/forms/blank.ts';
import type { PartCard, Product } from '../src/door/wire.ts';
import { finishCommand, freshFinishing, partsToFit } from '../src/parts/finish/finishing.ts';

const liner = { name: 'Liner' } as Product;
const job = { ...blankJob(1), title: 'Line the tank', parts: ['seal', 'funnel', 'tap'] };
const part = (id: string, more: object = {}): PartCard => ({ id, part: { title: id, state: 'here', reasons: [], ...more } });

test('no time is said before somebody says it, and what was said before stands there', () => {
  expect(freshFinishing({ ...job, begunMs: 0 }, []).minutes).toBeNull();
  expect(freshFinishing({ ...job, minutesTaken: 95 }, []).minutes).toBe(95);
});

test('parts of the job that are not fitted yet are offered, tools and other parts are not', () => {
  const parts = [part('seal'), part('funnel', { tool: true }), part('tap', { state: 'fitted' }), part('horn')];
  expect(partsToFit(job, parts).map(({ id }) => id)).toEqual(['seal']);
});

test('a job with a coat offers its clock as started, one without offers none', () => {
  expect(freshFinishing(job, [liner])).toMatchObject({ clock: true, product: 'Liner', minutes: null });
  expect(freshFinishing(job, [])).toMatchObject({ clock: false, product: '' });
});

test('what is left out is sent as not known', () => {
  const plain = { ...freshFinishing(job, [liner]), clock: false, note: '  ' };
  expect(finishCommand('a', plain, [liner], [])).toEqual({ kind: 'finishJob', id: 'a', startClock: null, partsFitted: [], minutesTaken: null, note: null });
});

test('what is said goes in one command; a part that is gone meanwhile does not', () => {
  const said = { ...freshFinishing(job, [liner]), fitted: ['seal', 'gone'], minutes: 40, note: ' Good. ', inHouse: true };
  expect(finishCommand('a', said, [liner], [part('seal')])).toEqual({
    kind: 'finishJob',
    id: 'a',
    startClock: { product: liner, startedMs: null, place: 'house' },
    partsFitted: ['seal'],
    minutesTaken: 40,
    note: 'Good.',
  });
});

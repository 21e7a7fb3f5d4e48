// Saving a form: a refusal stands at its field until that field is changed, and what was done can be taken back.
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { desk } from '../src/app/asking/desk.svelte.ts';
import { Saving } from '../src/app/forms/saving.svelte.ts';
import type { Command } from '../src/door/wire.ts';
import { t } from '../src/words/index.ts';
import { openDesk, settled } from './desk.ts';
import { done, door, refusal } from './door.ts';

const command: Command = { kind: 'openBike', bike: 'a' };

beforeAll(() => openDesk());
beforeEach(() => (desk.toast = null));

async function refused(saving: Saving, field: string | null, message: string) {
  const acting = saving.act(command);
  await settled();
  door.acts.at(-1)?.refuse(refusal(field, message));
  return acting;
}

test('a refusal stands at its field until that field is changed, whatever else is typed', async () => {
  const form = { title: '', price: 5 };
  const saving = new Saving(() => form);
  expect(await refused(saving, 'title', 'A part needs a name.')).toBeNull();
  expect([saving.at('title'), saving.at('price'), saving.rest(['title'])]).toEqual(['A part needs a name.', '', '']);
  form.price = 6;
  expect(saving.at('title')).toBe('A part needs a name.');
  form.title = 'Tyre';
  expect(saving.at('title')).toBe('');
});

test('a refusal of what the form does not show is said below it, until anything is changed', async () => {
  const form = { title: 'Tyre' };
  const saving = new Saving(() => form);
  await refused(saving, 'deliveryDays', 'At most a year.');
  expect([saving.at('title'), saving.rest(['title'])]).toEqual(['', 'At most a year.']);
  form.title = 'Rear tyre';
  expect(saving.rest(['title'])).toBe('');
  await refused(saving, null, 'The device is full.');
  expect(saving.rest(['title'])).toBe('The device is full.');
});

test('it is busy while it waits, and not after; once it is saved no refusal is left', async () => {
  const saving = new Saving(() => ({ title: '' }));
  await refused(saving, 'title', 'A part needs a name.');
  expect(saving.busy).toBe(false);
  const acting = saving.act(command, 'Saved.');
  await settled();
  expect(saving.busy).toBe(true);
  door.acts.at(-1)?.answer(done('b1'));
  expect((await acting)?.batch).toBe('b1');
  expect([saving.busy, saving.refusal, saving.at('title')]).toEqual([false, null, '']);
  expect(desk.toast).toEqual({ text: 'Saved.', batches: ['b1'], bad: false });
});

test('nothing changed, nothing to take back', async () => {
  const acting = desk.act(command, 'Nothing new.');
  await settled();
  door.acts[0]?.answer({ ...done('b1'), changes: 0 });
  await acting;
  expect(desk.toast?.batches).toEqual([]);
});

test('several are taken back last first, and one that is refused ends it and is said', async () => {
  const undoing = desk.undo(['first', 'second']);
  await settled();
  expect(door.acts.map(({ asked }) => asked)).toEqual([{ kind: 'undo', batch: 'second' }]);
  door.acts[0]?.answer(done('u1'));
  await settled();
  expect(door.acts[1]?.asked).toEqual({ kind: 'undo', batch: 'first' });
  door.acts[1]?.answer(done('u2'));
  await undoing;
  expect(desk.toast).toEqual({ text: t('toast-undone'), batches: [], bad: false });

  const failing = desk.undo(['first', 'second']);
  await settled();
  door.acts[2]?.refuse(refusal(null, 'Something newer stands over it.'));
  await failing;
  expect(door.acts).toHaveLength(3);
  expect(desk.toast).toEqual({ text: 'Something newer stands over it.', batches: [], bad: true });
});

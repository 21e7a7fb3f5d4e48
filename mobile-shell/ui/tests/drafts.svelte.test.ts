// What is typed and not yet saved: it is there again, it goes over what the record has become, and nothing of it stays behind.
import { flushSync } from 'svelte';
import { afterEach, expect, test, vi } from 'vitest';
import { Drafted, draftedPlace, isDrafted } from '../src/app/forms/drafted.svelte.ts';

interface Part {
  title: string;
  price?: number | null;
  days?: number[];
  at?: number;
}

let close: (() => void)[] = [];
afterEach(() => {
  for (const each of close) each();
  close = [];
});

/** A form that is opened on a record; closing it is no saving. */
function open(fresh: Part, form = 'part.7') {
  let draft!: Drafted<Part>;
  close.push(
    $effect.root(() => {
      draft = new Drafted<Part>();
    }),
  );
  draft.fill(form, fresh);
  flushSync();
  return draft;
}

function type(draft: Drafted<Part>, change: Partial<Part>) {
  if (draft.value) Object.assign(draft.value, change);
  flushSync();
}

test('a form that nobody touched leaves no draft', () => {
  const draft = open({ title: 'Front tyre' });
  expect(draft.value).toEqual({ title: 'Front tyre' });
  expect(draft.found).toBe(false);
  expect(localStorage).toHaveLength(0);
});

test('what was typed stands there again, and says so', () => {
  type(open({ title: 'Front tyre' }), { title: 'Rear tyre' });
  expect(isDrafted('part.7')).toBe(true);
  const again = open({ title: 'Front tyre' });
  expect(again.value?.title).toBe('Rear tyre');
  expect(again.found).toBe(true);
  // Another form has nothing of it.
  expect(open({ title: '' }, 'part.8').found).toBe(false);
});

test('only what was typed goes over a record that has changed meanwhile', () => {
  type(open({ title: 'Front tyre', price: 40 }), { title: 'Rear tyre' });
  expect(open({ title: 'Tyre', price: 55, days: [3] }).value).toEqual({ title: 'Rear tyre', price: 55, days: [3] });
});

test('what another version kept in another shape is left where it is', () => {
  type(open({ title: 'Front tyre', days: [1, 2] }), { title: 'Rear tyre', days: [4] });
  const newer = open({ title: 'Front tyre', days: 'a week' } as unknown as Part);
  expect(newer.value).toEqual({ title: 'Rear tyre', days: 'a week' });
});

test('typed back to what it was, there is nothing to keep, and a value left out is no change', () => {
  const draft = open({ title: 'Front tyre' });
  type(draft, { title: 'Rear tyre' });
  type(draft, { title: 'Front tyre', price: null });
  expect(localStorage).toHaveLength(0);
});

test('saved or discarded, nothing of it comes again', () => {
  const draft = open({ title: 'Front tyre', days: [1] });
  type(draft, { title: 'Rear tyre' });
  draft.discard();
  flushSync();
  expect(draft.value).toEqual({ title: 'Front tyre', days: [1] });
  expect(localStorage).toHaveLength(0);
  type(draft, { title: 'Rear tyre' });
  draft.done();
  type(draft, { title: 'Typed while it was being saved' });
  expect(localStorage).toHaveLength(0);
});

test('an answer that comes late overwrites nothing, and the record given is not written to', () => {
  const fresh = { title: 'Front tyre', days: [1] };
  const draft = open(fresh);
  type(draft, { title: 'Rear tyre' });
  draft.value?.days?.push(2);
  draft.fill('part.7', { title: 'From the answer', price: 55 });
  expect(draft.value).toEqual({ title: 'Rear tyre', days: [1, 2] });
  expect(fresh).toEqual({ title: 'Front tyre', days: [1] });
});

test('a sheet of a list opens again at its place; what is no place is none', () => {
  type(open({ title: '', at: 0 }, 'coat'), { title: 'Primer', at: 2 });
  expect(draftedPlace('coat')).toBe(2);
  type(open({ title: '' }, 'odd'), { title: 'x', at: -1 });
  expect(draftedPlace('odd')).toBeNull();
  expect(draftedPlace('nothing')).toBeNull();
});

test('a draft that cannot be read is none, and a device without room still lets one type', () => {
  for (const kept of ['{', '[]', '3', '{"from":1,"now":{}}', 'null']) {
    localStorage.setItem('layshaft.draft.part.7', kept);
    expect(isDrafted('part.7')).toBe(false);
    expect(open({ title: 'Front tyre' }).value).toEqual({ title: 'Front tyre' });
  }
  const full = vi.fn(() => {
    throw new DOMException('full', 'QuotaExceededError');
  });
  vi.stubGlobal('localStorage', { getItem: () => null, setItem: full });
  const draft = open({ title: 'Front tyre' });
  type(draft, { title: 'Rear tyre' });
  expect(full).toHaveBeenCalled();
  expect(draft.value?.title).toBe('Rear tyre');
});

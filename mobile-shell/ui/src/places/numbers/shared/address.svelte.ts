// What a page of numbers tries stands in its address, so that Back, a reload and a shared link bring it again. The names
// are those of the fields at the door.
import { route } from '../../../app/route.svelte.ts';
import { keyOf, type Key } from '../../../words/index.ts';

/** A number from the address; none where nothing or no number stands there. */
export function numberIn(field: string): number | null {
  const text = route.query.get(field);
  const value = text === null || text.trim() === '' ? NaN : Number(text);
  return Number.isFinite(value) ? value : null;
}

export function textIn(field: string): string | null {
  return route.query.get(field);
}

/** One of the keys of a list of words, from the address. */
export function wordIn<List extends string>(field: string, list: List): Key<List> | null {
  return keyOf(list, route.query.get(field));
}

export function flagIn(field: string): boolean | null {
  const text = route.query.get(field);
  return text === 'true' ? true : text === 'false' ? false : null;
}

/** Several numbers by their names. */
export function numbersIn<F extends string>(fields: readonly F[]): Record<F, number | null> {
  return Object.fromEntries(fields.map((field) => [field, numberIn(field)])) as Record<F, number | null>;
}

/** Tries something else: what is `null` is left out again. */
export function attempt(change: Record<string, string | number | boolean | null>) {
  const query = new URLSearchParams(route.query);
  for (const [field, value] of Object.entries(change)) {
    if (value === null) query.delete(field);
    else query.set(field, String(value));
  }
  show(query);
}

/** Tries only this and forgets the rest. */
export function begin(only: Record<string, string>) {
  show(new URLSearchParams(only));
}

function show(query: URLSearchParams) {
  const text = query.toString();
  route.replace(`#/${route.path.join('/')}${text ? `?${text}` : ''}`);
}

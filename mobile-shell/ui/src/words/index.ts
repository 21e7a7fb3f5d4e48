// Every word that the pages show, from the catalogue in `fixtures/words`: a language is a folder there. What the core
// says (reasons, findings, items) is put into words in `messages.ts`.
import { Catalogue, PlainNumber, type Texts } from './catalogue.ts';
import { inEnglish } from './core.ts';
import type { Words } from '../../../../.build/words/ids.ts';

export type Id = keyof Words;
/** What is filled into a text: nothing, or a value by each name. */
type Filled<I extends Id> = Words[I] extends null ? [] : [values: Words[I]];
/** How the ids of a list end: `open`, `begun` and `done` of `job-state`. */
export type Key<List extends string> = Id extends infer I ? (I extends `${List}-${infer K}` ? K : never) : never;

type Value = string | number | boolean | null;

const files = import.meta.glob<Texts>('../../../../fixtures/words/en/pages/*/*.ftl', { eager: true, import: 'default' });
const catalogue = new Catalogue('pages', files, inEnglish);

/** As the catalogue chooses by it: `true`, `false`, and `none` for what is missing. */
function chosen(value: Value): string | PlainNumber {
  if (typeof value === 'number') return new PlainNumber(value);
  return value === null ? 'none' : String(value);
}

/** The text of an id, with its values filled in. */
export function t<I extends Id>(id: I, ...[values]: Filled<I>): string {
  const given = Object.entries((values ?? {}) as Record<string, Value>);
  return catalogue.format(id, Object.fromEntries(given.map(([name, value]) => [name, chosen(value)])));
}

/** The keys of a list, in the order of the catalogue. */
export function keys<List extends string>(list: List): Key<List>[] {
  const start = `${list}-`;
  const found = catalogue.ids.filter((id) => id.startsWith(start));
  return found.map((id) => id.slice(start.length) as Key<List>);
}

/** A text as a key of a list; none where it is no such key. */
export function keyOf<List extends string>(list: List, text: string | null): Key<List> | null {
  const known = text !== null && catalogue.has(`${list}-${text}`);
  return (known ? text : null) as Key<List> | null;
}

/** A list to choose from. */
export function choices<List extends string>(list: List): { value: Key<List>; word: string }[] {
  return keys(list).map((value) => ({ value, word: catalogue.format(`${list}-${value}`) }));
}

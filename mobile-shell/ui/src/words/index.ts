// Every word that the pages show, from the catalogue in `fixtures/words`: a translation is another folder there. What the core
// says (reasons, findings, items) comes from the core in its own sentences.
import { FluentBundle, FluentNumber } from '@fluent/bundle';
import type { FluentResource, FluentVariable } from '@fluent/bundle';
import type { Words } from './ids.ts';

export type Id = keyof Words;
/** What is filled into a text: nothing, or a value by each name. */
type Filled<I extends Id> = Words[I] extends null ? [] : [values: Words[I]];
/** How the ids of a list end: `open`, `begun` and `done` of `job-state`. */
export type Mark<List extends string> = Id extends infer I ? (I extends `${List}-${infer M}` ? M : never) : never;

type Value = string | number | boolean | null;
type Pattern = NonNullable<FluentResource['body'][number]['value']>;

/** A number that is printed as it is. The pages write numbers for people before they hand them over. */
class Plain extends FluentNumber {
  override toString(): string {
    return String(this.value);
  }
}

const files = import.meta.glob<Record<string, Pattern>>('../../../../fixtures/words/en/pages/*/*.ftl', { eager: true, import: 'default' });
const catalogue = Object.fromEntries(Object.values(files).flatMap((file) => Object.entries(file)));
const bundle = new FluentBundle('en', { useIsolating: false });
bundle.addResource({ body: Object.entries(catalogue).map(([id, value]) => ({ id, value, attributes: {} })) });

/** As the catalogue chooses by it: `true`, `false`, and `none` for what is missing. */
function chosen(value: Value): FluentVariable {
  if (typeof value === 'number') return new Plain(value);
  return value === null ? 'none' : String(value);
}

function told(id: string, values: Record<string, Value> = {}): string {
  const pattern = catalogue[id];
  if (pattern === undefined) return id;
  return bundle.formatPattern(pattern, Object.fromEntries(Object.entries(values).map(([name, value]) => [name, chosen(value)])));
}

/** The text of an id, with its values filled in. */
export function t<I extends Id>(id: I, ...[values]: Filled<I>): string {
  return told(id, values ?? {});
}

/** The marks of a list, in the order of the catalogue. */
export function marks<List extends string>(list: List): Mark<List>[] {
  const start = `${list}-`;
  const found = Object.keys(catalogue).filter((id) => id.startsWith(start));
  return found.map((id) => id.slice(start.length) as Mark<List>);
}

/** A text as a mark of a list; none where it is no such mark. */
export function markOf<List extends string>(list: List, text: string | null): Mark<List> | null {
  const known = text !== null && Object.hasOwn(catalogue, `${list}-${text}`);
  return (known ? text : null) as Mark<List> | null;
}

/** A list to choose from. */
export function choices<List extends string>(list: List): { value: Mark<List>; word: string }[] {
  return marks(list).map((value) => ({ value, word: told(`${list}-${value}`) }));
}

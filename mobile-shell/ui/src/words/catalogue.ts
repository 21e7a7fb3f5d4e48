// A tree of words as the build makes it of the `.ftl` files, and how one of its messages is said. The pages have one, the core has one.
import { FluentBundle, FluentNumber } from '@fluent/bundle';
import type { FluentFunction, FluentResource, FluentVariable } from '@fluent/bundle';

type Pattern = NonNullable<FluentResource['body'][number]['value']>;
/** The messages of a file by their ids. */
export type Texts = Record<string, Pattern>;

/** A number that chooses the plural and is printed as it is. Who wants groups or decimals writes the number for people first. */
export class PlainNumber extends FluentNumber {
  override toString(): string {
    return String(this.value);
  }
}

export class Catalogue {
  readonly #texts: Texts;
  readonly #bundle: FluentBundle;

  constructor(files: Record<string, Texts>, functions: Record<string, FluentFunction> = {}) {
    this.#texts = Object.assign({}, ...Object.values(files)) as Texts;
    this.#bundle = new FluentBundle('en', { useIsolating: false, functions });
    this.#bundle.addResource({ body: Object.entries(this.#texts).map(([id, value]) => ({ id, value, attributes: {} })) });
  }

  get ids(): string[] {
    return Object.keys(this.#texts);
  }

  has(id: string): boolean {
    return Object.hasOwn(this.#texts, id);
  }

  /** A message with what goes into it; its id where there is none, so that it is seen. */
  format(id: string, values: Record<string, FluentVariable> = {}): string {
    const pattern = this.#texts[id];
    return pattern === undefined ? id : this.#bundle.formatPattern(pattern, values);
  }
}

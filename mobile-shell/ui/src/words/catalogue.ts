// A tree of words as the build makes it of the `.ftl` files, and how one of its messages is said. The pages have one, the core has one.
// Over the English words lie those of the language that is spoken; what it has not is said in English, and marked.
import { FluentBundle, FluentNumber } from '@fluent/bundle';
import type { FluentFunction, FluentVariable } from '@fluent/bundle';
import { ENGLISH, overEnglish, type Language, type Texts } from './spoken.ts';

export type { Texts };

/** A number that chooses the plural and is printed as it is. Who wants groups or decimals writes the number for people first. */
export class PlainNumber extends FluentNumber {
  override toString(): string {
    return String(this.value);
  }
}

type Functions = Record<string, FluentFunction>;
type Values = Record<string, FluentVariable>;

/** The texts of one language with its plurals. */
class Voice {
  readonly texts: Texts;
  readonly #bundle: FluentBundle;

  constructor(tag: string, texts: Texts, functions: Functions) {
    this.texts = texts;
    this.#bundle = new FluentBundle(tag, { useIsolating: false, functions });
    this.#bundle.addResource({ body: Object.entries(texts).map(([id, value]) => ({ id, value, attributes: {} })) });
  }

  /** Nothing where there are no words, or where they ask for something that is not handed over. */
  say(id: string, values: Values): string | null {
    const pattern = Object.hasOwn(this.texts, id) ? this.texts[id] : undefined;
    if (pattern === undefined) return null;
    const errors: Error[] = [];
    const text = this.#bundle.formatPattern(pattern, values, errors);
    return errors.length === 0 ? text : null;
  }
}

export class Catalogue {
  readonly #part: 'pages' | 'core';
  readonly #functions: Functions;
  readonly #english: Voice;
  readonly #mark: (text: string) => string;
  #other: { language: Language; voice: Voice } | null = null;

  /** `mark` marks a text that is English among another language. */
  constructor(part: 'pages' | 'core', files: Record<string, Texts>, mark: (text: string) => string, functions: Functions = {}) {
    this.#part = part;
    this.#functions = functions;
    this.#mark = mark;
    this.#english = new Voice(ENGLISH, Object.assign({}, ...Object.values(files)) as Texts, functions);
  }

  get ids(): string[] {
    return Object.keys(this.#english.texts);
  }

  has(id: string): boolean {
    return Object.hasOwn(this.#english.texts, id);
  }

  /** A message with what goes into it, marked where it is English for want of words; its id where there is none, so that it is seen. */
  format(id: string, values: Values = {}): string {
    const english = () => this.#english.say(id, values) ?? id;
    const voice = this.#over();
    return voice ? (voice.say(id, values) ?? this.#mark(english())) : english();
  }

  /** A sign of the language, such as that before the decimals: never marked. */
  sign(id: string, values: Values = {}): string {
    return this.#over()?.say(id, values) ?? this.#english.say(id, values) ?? '';
  }

  #over(): Voice | null {
    const language = overEnglish();
    if (language && this.#other?.language !== language) {
      this.#other = { language, voice: new Voice(language.tag, language[this.#part], this.#functions) };
    }
    return language && this.#other ? this.#other.voice : null;
  }
}

// Which language the pages speak. English is compiled in; any other is one file of the site, `words/<tag>.json`, which is fetched
// once, before the pages are loaded. Small enough for the first script.
import type { FluentResource } from '@fluent/bundle';

/** The messages of a language by their ids, as the build makes them of the `.ftl` files. */
export type Texts = Record<string, NonNullable<FluentResource['body'][number]['value']>>;

export interface Language {
  /** BCP 47. */
  tag: string;
  /** What the pages say. */
  pages: Texts;
  /** What the core says. */
  core: Texts;
}

export const ENGLISH = 'en';

let spoken: Language | null = null;

/** The language that lies over English; none while English is spoken. */
export const overEnglish = () => spoken;
export const spokenTag = () => spoken?.tag ?? ENGLISH;

/** From now on this language is spoken; English without one. */
export function speak(language: Language | null) {
  spoken = language;
}

const TAG = /^[a-z]{2,3}(-[a-z0-9]{1,8})*$/i;
const isTexts = (given: unknown) => typeof given === 'object' && given !== null;

/** Where what jobs, packs and tables say lies in a language; nothing for English, which is in the program. */
export const contentAddress = (tag: string) => (tag === ENGLISH || !TAG.test(tag) ? null : new URL(`words/${tag}.content.json`, document.baseURI).href);

/** Fetches the language of a tag; nothing where there is none. */
export async function fetchLanguage(tag: string, get: typeof fetch = fetch): Promise<Language | null> {
  if (!TAG.test(tag)) return null;
  try {
    const answer = await get(new URL(`words/${tag}.json`, document.baseURI));
    const language = (answer.ok ? await answer.json() : null) as Omit<Language, 'tag'> | null;
    return language && isTexts(language.pages) && isTexts(language.core) ? { ...language, tag } : null;
  } catch {
    // Not there, or a page in its place: English is.
    return null;
  }
}

/** The best of the languages at hand for what a reader wants, in that order: the same tag, else the same language elsewhere. */
export function bestMatch(wanted: readonly string[], atHand: readonly string[]): string {
  const primary = (tag: string) => tag.toLowerCase().split('-')[0];
  for (const tag of wanted) {
    const found = atHand.find((each) => each.toLowerCase() === tag.toLowerCase()) ?? atHand.find((each) => primary(each) === primary(tag));
    if (found) return found;
  }
  return ENGLISH;
}

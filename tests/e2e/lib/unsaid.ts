// Finds what a page shows instead of words: the id of a message that has none, or a value that is no text.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';

const CATALOGUE = new URL('../../../fixtures/words/en', import.meta.url).pathname;

/** The ids that cannot be mistaken for a word. */
export const ids = new Set(
  (readdirSync(CATALOGUE, { recursive: true }) as string[])
    .filter((name) => name.endsWith('.ftl'))
    .flatMap((name) => [...readFileSync(join(CATALOGUE, name), 'utf8').matchAll(/^(\w+(?:-\w+)+) =/gm)].map((found) => found[1] ?? '')),
);

const ODD = /\[object \w+\]|\bundefined\b|\bNaN\b|\{ ?\$\w+ ?\}/g;

/** What is no word in the texts of a page, and in those that are read aloud. */
export function unsaid(texts: string): string[] {
  const named = texts.match(/\b[A-Za-z]\w*(?:-\w+)+\b/g) ?? [];
  return [...(texts.match(ODD) ?? []), ...new Set(named.filter((name) => ids.has(name)))];
}

/** Everything that a page says, to the eye and to the ear. */
export function spoken(page: Page): Promise<string> {
  return page.evaluate(() => {
    const read = ['aria-label', 'aria-description', 'title', 'alt', 'placeholder'];
    const valuesOf = (name: string) => [...document.querySelectorAll(`[${name}]`)].map((one) => one.getAttribute(name));
    return [document.body.innerText, ...read.flatMap(valuesOf)].join('\n');
  });
}

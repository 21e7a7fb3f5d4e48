// The scripts and components of the pages, and their syntax trees as plain nodes.
import { parse } from 'svelte/compiler';
import ts from 'typescript';

const all = import.meta.glob<string>(['../../src/**/*.{svelte,ts}', '!../../src/words/**', '!**/*.d.ts'], { eager: true, query: '?raw', import: 'default' });

/** The files that may say something, each with its text: all but the words themselves. */
export const sources: { file: string; text: string }[] = Object.entries(all).map(([path, text]) => ({ file: path.replace('../../src/', ''), text }));

/** A node of the markup, as the compiler of Svelte gives it. */
export interface Markup {
  type: string;
  name?: string;
  [field: string]: unknown;
}

/** The markup of a component. */
export const markup = (text: string): Markup => parse(text, { modern: true }).fragment as unknown as Markup;

/** The scripts of a component, or a script itself. */
export function script(file: string, text: string): ts.SourceFile {
  const code = file.endsWith('.svelte') ? [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((found) => found[1] ?? '').join('\n') : text;
  return ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true);
}

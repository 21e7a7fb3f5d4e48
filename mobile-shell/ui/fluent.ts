// Turns a file of the catalogue of words (`*.ftl`) into a module while the pages are built, so that no parser ships with them:
// what comes out is each id with its text, as `@fluent/bundle` resolves it.
import { FluentResource } from '@fluent/bundle';
import { parse } from '@fluent/syntax';
import type { Plugin } from 'vite';

export function fluent(): Plugin {
  return {
    name: 'fluent',
    enforce: 'pre',
    transform: {
      filter: { id: /\.ftl$/ },
      handler(text, file) {
        // The parser of the bundle skips what it cannot read; a page would then show an id.
        for (const entry of parse(text, { withSpans: false }).body) {
          if (entry.type === 'Junk') this.error(`${file} cannot be read here: ${entry.content}`);
        }
        const words = Object.fromEntries(new FluentResource(text).body.map(({ id, value }) => [id, value]));
        // A browser reads a long text of JSON faster than the same as an object of JavaScript.
        return { code: `export default JSON.parse(${JSON.stringify(JSON.stringify(words))});`, map: null };
      },
    },
  };
}

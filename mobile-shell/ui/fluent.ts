// Brings the catalogue of words (`*.ftl`) into the pages while they are built, so that no parser ships with them. English is
// compiled in; any other language is a file of its own, `words/<tag>.json`, and is listed in `virtual:languages`.
import type { Plugin } from 'vite';
import { ENGLISH, compiled, content, language, languages, tags } from './languages/files.js';

const LIST = 'virtual:languages';

export function fluent(): Plugin {
  return {
    name: 'fluent',
    enforce: 'pre',
    resolveId: (id) => (id === LIST ? `\0${LIST}` : null),
    load: (id) => (id === `\0${LIST}` ? `export const languages = ${JSON.stringify(languages())};` : null),
    transform: {
      filter: { id: /\.ftl$/ },
      handler(text, file) {
        // A browser reads a long text of JSON faster than the same as an object of JavaScript.
        return { code: `export default JSON.parse(${JSON.stringify(JSON.stringify(compiled(file, text)))});`, map: null };
      },
    },
    generateBundle() {
      for (const tag of tags().filter((tag) => tag !== ENGLISH)) {
        this.emitFile({ type: 'asset', fileName: `words/${tag}.json`, source: JSON.stringify(language(tag)) });
        this.emitFile({ type: 'asset', fileName: `words/${tag}.content.json`, source: content(tag) });
      }
    },
  };
}

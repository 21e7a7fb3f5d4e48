// What `cargo xtask words` prints: words that nobody says, what a language lacks, what it asks for in vain, and how large it is. The
// file that is named first tells what the core says (`tests/words`). `--list` writes all sentences for an editor.
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { brotliCompressSync } from 'node:zlib';
import { ENGLISH, language, tags } from './files.js';
import { compared, english, messages } from './messages.js';
import { saidIn, shaped, uses } from './uses.js';

const SOURCE = new URL('../src/', import.meta.url);
const LIST = new URL('../../../.build/words/sentences.md', import.meta.url);
const [coreFile = '', ...options] = process.argv.slice(2);
const core = JSON.parse(readFileSync(coreFile, 'utf8'));
const all = english();
const ids = all.filter(({ part }) => part === 'pages').map(({ id }) => id);

/** The scripts and components of the pages that may say something. */
const sources = /** @type {string[]} */ (readdirSync(SOURCE, { recursive: true }))
  .filter((name) => /\.(svelte|ts)$/.test(name) && !name.startsWith('words') && !name.endsWith('.d.ts'))
  .sort()
  .map((name) => ({ name, text: readFileSync(new URL(name, SOURCE), 'utf8') }));

const used = sources.map(({ text }) => uses(text));
const shapes = used.flatMap((each) => each.shapes);
const said = [...new Set(used.flatMap((each) => each.ids))];
const reached = new Set([...said, ...shaped(ids, shapes)]);

const unused = [...ids.filter((id) => !reached.has(id)), ...core.unused];
const without = [...said.filter((id) => !ids.includes(id)), ...core.missing];
let wrong = without.length + core.unknown.length;

/** A list under its head, or nothing. */
function print(head, list) {
  if (list.length > 0) console.log(`${head}: ${list.length}\n${list.map((each) => `  ${each}`).join('\n')}`);
}

print('Words that nobody says', unused);
print('Said, without English words', without);
print('Arguments out of step with the core', core.unknown);
for (const tag of tags()) {
  const json = JSON.stringify(language(tag));
  const kilobytes = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;
  const own = messages(tag);
  const { missing, superfluous, unknown } = compared(all, own);
  wrong += unknown.length;
  console.log(`${tag}: ${own.length} messages, ${kilobytes(Buffer.byteLength(json))}, with brotli ${kilobytes(brotliCompressSync(json).length)}`);
  if (tag !== ENGLISH) print(`${tag}: said in English for want of words`, missing);
  print(`${tag}: not in English`, superfluous);
  print(`${tag}: out of step with English`, unknown);
}

/** Where each id of the pages is said. */
function placesOfPages() {
  const places = new Map(ids.map((id) => [id, /** @type {string[]} */ ([])]));
  for (const { name, text } of sources) {
    for (const { id, shape, line } of saidIn(text)) {
      const meant = id ? [id] : shaped(ids, [shape ?? '']);
      for (const each of meant) places.get(each)?.push(`ui/src/${name}:${line}`);
    }
  }
  return places;
}

/** At most so many places of a sentence; an editor wants to look at one or two. */
const PLACES = 4;

function listed() {
  const pages = placesOfPages();
  const sections = new Map();
  for (const message of all) sections.set(message.file, [...(sections.get(message.file) ?? []), message]);
  const entry = ({ part, id, text, names }) => {
    const places = (part === 'pages' ? pages.get(id) : core.places[id]) ?? [];
    const about = [names.map((name) => `$${name}`).join(', '), places.slice(0, PLACES).join(', ') + (places.length > PLACES ? ' …' : '')];
    return `**${id}**\n\n    ${text.replaceAll('\n', '\n    ')}\n\n${about.filter(Boolean).join(' · ')}\n`;
  };
  return [...sections].map(([file, list]) => `## ${file}\n\n${list.map(entry).join('\n')}`).join('\n');
}

if (options.includes('--list')) {
  mkdirSync(new URL('.', LIST), { recursive: true });
  writeFileSync(LIST, `# Every sentence of the catalogue\n\nEach with its id, its text, what is filled in, and where it is said.\n\n${listed()}`);
  console.log(`All sentences are in ${LIST.pathname.replace(/.*\/(?=\.build)/, '')}`);
}
process.exitCode = wrong > 0 ? 1 : 0;

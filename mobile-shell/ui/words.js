// Reads the catalogue of words and writes `.build/words/ids.ts`, which tells the compiler each id with what is to be filled in.
// It also brings the pages' words of every language into the form of their own serializer; with `--check` it fails on a difference instead.
import { mkdirSync, writeFileSync } from 'node:fs';
import { parse, serialize } from '@fluent/syntax';
import { Filled } from './languages/arguments.js';
import { ENGLISH, PARTS, files, tags } from './languages/files.js';

const IDS = new URL('../../.build/words/ids.ts', import.meta.url);
const check = process.argv.includes('--check');
const wrong = [];

/** What a language may ask of a number; a key of another kind is compared as it is. */
const PLURALS = ['zero', 'one', 'two', 'few', 'many', 'other'];
/** Stands in the catalogue for a value that is missing. */
const NONE = 'none';

/** The type of a value: by the keys that choose on it, or else what may be printed. */
function typeOf(keys, printed) {
  if (!keys) return 'string | number';
  const missing = keys.includes(NONE) ? ' | null' : '';
  const others = [...new Set(keys)].filter((key) => key !== NONE);
  if (others.every((key) => key === 'true' || key === 'false')) return `boolean${missing}`;
  if (others.every((key) => key === 'other')) return `string${missing}`;
  if (others.every((key) => typeof key === 'number' || PLURALS.includes(key))) return `number${missing}`;
  return printed ? `string${missing}` : others.map((key) => `'${key}'`).join(' | ') + missing;
}

function argumentsOf(message) {
  const seen = Filled.in(message);
  if (seen.names.length === 0) return 'null';
  return `{ ${seen.names.map((name) => `${name}: ${typeOf(seen.chosen.get(name), seen.printed.has(name))}`).join('; ')} }`;
}

function differs(file, kept, wanted) {
  if (kept === wanted) return;
  if (check) wrong.push(`${file} is out of step`);
  else writeFileSync(file, wanted);
}

/** Reads a file strictly, and gives its messages. */
function read({ name, at, text }, part) {
  const resource = parse(text, { withSpans: false });
  for (const entry of resource.body) if (entry.type === 'Junk') wrong.push(`${name} cannot be read here: ${entry.content.trim()}`);
  // The words of the core stand in a form of their own, which its tests read.
  if (part === 'pages') differs(at, text, serialize(resource, { withJunk: true }));
  return resource.body.filter((entry) => entry.type === 'Message');
}

const found = new Map();
for (const tag of tags()) {
  for (const part of PARTS) {
    const ids = new Set();
    for (const file of files(tag, part)) {
      for (const entry of read(file, part)) {
        if (ids.has(entry.id.name)) wrong.push(`${tag}/${file.name} says ${entry.id.name} a second time`);
        ids.add(entry.id.name);
        if (tag === ENGLISH && part === 'pages') found.set(entry.id.name, argumentsOf(entry));
      }
    }
  }
}

const lines = [...found].map(([id, given]) => `  '${id}': ${given};`);
mkdirSync(new URL('.', IDS), { recursive: true });
writeFileSync(IDS, `/** Each id of the catalogue, and what is filled into its text. */\nexport interface Words {\n${lines.join('\n')}\n}\n`);

if (wrong.length > 0) {
  console.error(`${wrong.join('\n')}\nThe catalogue of words: correct what cannot be read, then \`npm run words\` in mobile-shell/ui.`);
  process.exit(1);
}

// The messages of the catalogue with their syntax: what each says, and what it wants to be filled in.
import { parse, serialize } from '@fluent/syntax';
import { ENGLISH, files, PARTS } from './files.js';
import { Filled } from './arguments.js';

/** What the functions of the catalogue are called; any other has no meaning. */
const FUNCTIONS = ['QUANTITY', 'EXACT', 'WORK'];

/**
 * Every message of a language, in the order of its files.
 * @param {string} tag
 * @returns {{ part: 'pages' | 'core', file: string, id: string, text: string, names: string[] }[]}
 */
export function messages(tag) {
  return PARTS.flatMap((part) =>
    files(tag, part).flatMap(({ name, text }) =>
      parse(text, { withSpans: false })
        .body.filter((entry) => entry.type === 'Message' && entry.value)
        .map((entry) => ({ part, file: name, id: entry.id.name, text: textOf(entry), names: Filled.in(entry).names })),
    ),
  );
}

/** A message as it stands in its file, without its id. */
function textOf(message) {
  const written = serialize(Object.assign(parse(''), { body: [message] }), {});
  return written.slice(written.indexOf('=') + 1).trim();
}

/**
 * What is out of step between a language and English.
 * @param {ReturnType<typeof messages>} english
 * @param {ReturnType<typeof messages>} other
 */
export function compared(english, other) {
  const known = new Map(english.map((message) => [`${message.part} ${message.id}`, message]));
  const there = new Set(other.map(({ part, id }) => `${part} ${id}`));
  const unknown = other.flatMap(({ part, id, names, text }) => {
    const strange = names.filter((name) => !known.get(`${part} ${id}`)?.names.includes(name)).map((name) => `${id}: there is no $${name}`);
    const calls = [...text.matchAll(/\b([A-Z]+)\(/g)].map((found) => found[1] ?? '').filter((name) => !FUNCTIONS.includes(name));
    return known.has(`${part} ${id}`) ? [...strange, ...calls.map((name) => `${id}: there is no ${name}()`)] : [];
  });
  return {
    missing: english.filter(({ part, id }) => !there.has(`${part} ${id}`)).map(({ id }) => id),
    superfluous: other.filter(({ part, id }) => !known.has(`${part} ${id}`)).map(({ id }) => id),
    unknown,
  };
}

export const english = () => messages(ENGLISH);

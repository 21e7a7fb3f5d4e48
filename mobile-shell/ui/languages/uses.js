// Finds which ids a page says: by name, by a template that fills in a key, and by lists of keys.

const NAMED = /\bt\(\s*'([^']*)'/g;
const FILLED = /\bt\(\s*`([^`]*)`/g;
const LISTED = /\b(?:(?:choices|keys|keyOf)\(|wordIn\(\s*'\w+',)\s*'([^']*)'/g;

/**
 * What is said by name, and what the ids look like that a template or a list stands for; each with its line.
 * @param {string} text
 * @returns {{ id?: string, shape?: string, line: number }[]}
 */
export function saidIn(text) {
  const all = (/** @type {RegExp} */ what) =>
    [...text.matchAll(what)].map((found) => ({ said: found[1] ?? '', line: text.slice(0, found.index).split('\n').length }));
  return [
    ...all(NAMED).map(({ said, line }) => ({ id: said, line })),
    // A key is one word, so that `numbers-${kind}` does not stand for `numbers-drive-more` too.
    ...all(FILLED).map(({ said, line }) => ({ shape: said.replace(/\$\{[^}]*\}/g, '[^-]+'), line })),
    ...all(LISTED).map(({ said, line }) => ({ shape: `${said}-.+`, line })),
  ];
}

/**
 * What a script or component says. Markup is read like a script: a call looks alike in both.
 * @param {string} text
 */
export function uses(text) {
  const said = saidIn(text);
  return { ids: said.flatMap(({ id }) => id ?? []), shapes: said.flatMap(({ shape }) => shape ?? []) };
}

/**
 * Those of many ids that look like one of the shapes.
 * @param {string[]} ids
 * @param {string[]} shapes
 */
export function shaped(ids, shapes) {
  const forms = shapes.map((shape) => new RegExp(`^${shape}$`));
  return ids.filter((id) => forms.some((form) => form.test(id)));
}

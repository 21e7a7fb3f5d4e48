// Finds which ids a page says: by name, by a template that fills in a key, and by lists of keys.

export interface Uses {
  /** Said as they are. */
  ids: string[];
  /** What the ids look like that a template or a list stands for. */
  shapes: string[];
}

const NAMED = /\bt\(\s*'([^']*)'/g;
const FILLED = /\bt\(\s*`([^`]*)`/g;
const LISTED = /\b(?:(?:choices|keys|keyOf)\(|wordIn\(\s*'\w+',)\s*'([^']*)'/g;

const all = (text: string, what: RegExp) => [...text.matchAll(what)].map((found) => found[1] ?? '');

/** What a script or component says. Markup is read like a script: a call looks alike in both. */
export function uses(text: string): Uses {
  // A key is one word, so that `numbers-${kind}` does not stand for `numbers-drive-more` too.
  const filled = all(text, FILLED).map((template) => template.replace(/\$\{[^}]*\}/g, '[^-]+'));
  return { ids: all(text, NAMED), shapes: [...filled, ...all(text, LISTED).map((list) => `${list}-.+`)] };
}

/** Those of many ids that look like one of the shapes. */
export function shaped(ids: string[], shapes: string[]): string[] {
  const forms = shapes.map((shape) => new RegExp(`^${shape}$`));
  return ids.filter((id) => forms.some((form) => form.test(id)));
}

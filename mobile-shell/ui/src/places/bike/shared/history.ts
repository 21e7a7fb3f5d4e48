// Facts in words: field names and JSON values as a person reads them.
import { SECTIONS, shown } from './fields.ts';
import { words } from '../../../words/index.ts';

/** A field's name in words, or the name itself split at its capitals. */
export function fieldName(field: string): string {
  const known = words.spec.fields[field] ?? (words.cure.dataOf as Record<string, string>)[field] ?? words.history.fields[field];
  if (known) return known;
  const split = field.replace(/([A-Z])/g, ' $1').toLowerCase();
  return split.charAt(0).toUpperCase() + split.slice(1);
}

const FIELDS = new Map(SECTIONS.flatMap((section) => section.fields).map((field) => [field.key, field]));

/** A value as it stands in the table of changes, with the unit or word of its field. */
export function valueWords(json: string, name: string): string {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch {
    return json;
  }
  const field = FIELDS.get(name);
  return (field && shown(field, value)) || inWords(value);
}

function inWords(value: unknown): string {
  if (value === null || value === undefined || value === '') return words.history.none;
  if (typeof value === 'boolean') return value ? words.parts.yes : words.parts.no;
  if (Array.isArray(value)) return value.length === 0 ? words.history.nothing : value.map(inWords).join(', ');
  if (typeof value === 'object') {
    return Object.entries(value)
      .filter(([, each]) => each !== null)
      .map(([key, each]) => `${fieldName(key)}: ${inWords(each)}`)
      .join('; ');
  }
  return typeof value === 'string' ? value : JSON.stringify(value);
}

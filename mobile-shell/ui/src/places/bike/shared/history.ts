// Facts in words: JSON values as a person reads them. What a field is called comes from the core.
import { SECTIONS, shown } from './fields.ts';
import { tables } from '../../../app/asking/tables.svelte.ts';
import { listed } from '../../../words/core.ts';
import { t } from '../../../words/index.ts';

const FIELDS = new Map(SECTIONS.flatMap((section) => section.fields.map((field) => [`${section.kind}.${field.key}`, field] as const)));

/** A value as it stands in the table of changes, with the unit or word of its field. */
export function valueWords(json: string, kind: string, name: string): string {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch {
    return json;
  }
  const field = FIELDS.get(`${kind}.${name}`);
  return (field && shown(field, value)) || inWords(value, kind, name);
}

function inWords(value: unknown, kind: string, name: string): string {
  if (value === null || value === undefined || value === '') return t('history-none');
  if (typeof value === 'boolean') return value ? t('parts-yes') : t('parts-no');
  if (Array.isArray(value)) return value.length === 0 ? t('history-nothing') : listed(value.map((each) => inWords(each, kind, name)));
  if (typeof value === 'object') {
    return listed(
      Object.entries(value)
        .filter(([, each]) => each !== null)
        .map(([key, each]) => t('parts-labelled', { label: tables.field(kind, `${name}.${key}`), value: inWords(each, kind, `${name}.${key}`) })),
      'semicolon',
    );
  }
  return typeof value === 'string' ? value : JSON.stringify(value);
}

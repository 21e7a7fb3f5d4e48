// Facts in words, as the history and a bundle tell them.
import { beforeAll, expect, test } from 'vitest';
import { valueWords } from '../src/places/bike/shared/history.ts';
import { tables } from '../src/app/asking/tables.svelte.ts';
import { t } from '../src/words/index.ts';
import { openDesk } from './desk.ts';

beforeAll(() => openDesk());

test('a field is named in the words of the core, and one that only a newer program knows by its own name', () => {
  expect(tables.field('drive', 'frontTeeth')).toBe('Gearbox sprocket');
  expect(tables.field('drive', 'someNewField')).toBe('someNewField');
});

test('a value is told with the unit or the word of its field', () => {
  expect(valueWords('1905', 'wheel', 'circumferenceMm')).toBe('1\u202f905\u00a0mm');
  expect(valueWords('true', 'wheel', 'spoked')).toBe(t('parts-yes'));
  expect(valueWords('false', 'wheel', 'spoked')).toBe(t('parts-no'));
  expect(valueWords('"3.00-18"', 'wheel', 'tyre')).toBe('3.00-18');
});

test('nothing is told as nothing, and what is nested one by one', () => {
  expect(valueWords('null', 'wheel', 'circumferenceMm')).toBe(t('history-none'));
  expect(valueWords('""', 'identity', 'notes')).toBe(t('history-none'));
  expect(valueWords('[]', 'identity', 'notes')).toBe(t('history-nothing'));
  expect(valueWords('{"name":"primer","odd":[1,true],"gone":null}', 'job', 'wait')).toBe(`Wait: primer; Odd: 1, ${t('parts-yes')}`);
  expect(valueWords('not json', 'identity', 'notes')).toBe('not json');
});

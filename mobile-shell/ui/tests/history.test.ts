// Facts in words, as the history and a bundle tell them.
import { beforeAll, expect, test } from 'vitest';
import { fieldName, valueWords } from '../src/places/bike/shared/history.ts';
import { words } from '../src/words/index.ts';
import { openDesk } from './desk.ts';

beforeAll(() => openDesk());

test('a field is named in words, and one that has none by its parts', () => {
  expect(fieldName('frontTeeth')).toBe(words.spec.fields.frontTeeth);
  expect(fieldName('someNewField')).toBe('Some new field');
});

test('a value is told with the unit or the word of its field', () => {
  expect(valueWords('1905', 'circumferenceMm')).toBe('1\u202f905\u00a0mm');
  expect(valueWords('true', 'spoked')).toBe(words.parts.yes);
  expect(valueWords('false', 'spoked')).toBe(words.parts.no);
  expect(valueWords('"3.00-18"', 'tyre')).toBe('3.00-18');
});

test('nothing is told as nothing, and what is nested one by one', () => {
  expect(valueWords('null', 'circumferenceMm')).toBe(words.history.none);
  expect(valueWords('""', 'notes')).toBe(words.history.none);
  expect(valueWords('[]', 'notes')).toBe(words.history.nothing);
  expect(valueWords('{"partState":"here","odd":[1,true],"gone":null}', 'notes')).toBe(`Part state: here; Odd: 1, ${words.parts.yes}`);
  expect(valueWords('not json', 'notes')).toBe('not json');
});

// The catalogue and the pages in step: nothing said that is not there, nothing there that is not said, no sentence beside it.
import { expect, test } from 'vitest';
import { choices, keyOf, keys, t } from '../../src/words/index.ts';
import { literals } from './literals.ts';
import { sources } from './sources.ts';
import { shaped, uses } from '../../languages/uses.js';

const files = import.meta.glob<Record<string, unknown>>('../../../../fixtures/words/en/pages/*/*.ftl', { eager: true, import: 'default' });
const catalogue = Object.values(files).flatMap((words) => Object.keys(words));
const found = sources.map(({ text }) => uses(text));
const said = [...new Set(found.flatMap(({ ids }) => ids))];
const shapes = [...new Set(found.flatMap((use) => use.shapes))];

test('the search reads all pages and the whole catalogue', () => {
  expect(sources.length).toBeGreaterThan(250);
  expect(catalogue.length).toBeGreaterThan(1_500);
  expect(said.length).toBeGreaterThan(1_000);
  expect(shapes.length).toBeGreaterThan(50);
});

test('every id that a page says is in the catalogue', () => {
  expect(said.filter((id) => !catalogue.includes(id))).toEqual([]);
  expect(shapes.filter((shape) => shaped(catalogue, [shape]).length === 0)).toEqual([]);
});

test('every text of the catalogue is said by some page', () => {
  const reached = new Set([...said, ...shaped(catalogue, shapes)]);
  expect(catalogue.filter((id) => !reached.has(id))).toEqual([]);
});

test('no page has a sentence of its own', () => {
  const own = sources.map(({ file, text }) => ({ file, said: literals(file, text) }));
  expect(own.filter((each) => each.said.length > 0)).toEqual([]);
});

test('a sentence is found wherever somebody could read it, and what is for the machine is let pass', () => {
  const page = `<script lang="ts">
    import { a } from './some file.ts';
    type Kind = 'one of two' | 'the other';
    const rows = [{ label: 'Weight', key: 'mass' }];
    const why = \`It weighs \${a} too much\`;
    if (!rows) throw new Error('no rows at all');
    document.querySelector('main h1');
  </script>
  <p class="soft small" style:width="calc(1px + 2px)" title="On the scale">Put it down {a ? 'gently' : ''} {t('a-b')}</p>
  <Field label={a === 'dry mass' ? \`\${a} of it\` : t('c-d')} href="#/some where" hint="3.00-18" {a} />
  <style>p::before { content: 'not looked at'; }</style>`;
  expect(literals('Page.svelte', page)).toEqual(['On the scale', 'Put it down', 'gently', 'of it', 'Weight', 'It weighs', 'too much']);
  expect(literals('page.ts', `say(x ? 'Done.' : "It is done"); find('isDone', 'soft small-caps', 'data-x');`)).toEqual([
    'Done.',
    'It is done',
    'soft small-caps',
  ]);
});

test('ids are found by name, by template and by list', () => {
  const page = "{t('a-b')} {t(`c-${state}`)} {t(`d-${kind}-more`, { x: t('e-f', {}) })} choices('g'); keys('h'); wordIn('at', 'i'); at('j-k')";
  expect(uses(page)).toEqual({ ids: ['a-b', 'e-f'], shapes: ['c-[^-]+', 'd-[^-]+-more', 'g-.+', 'h-.+', 'i-.+'] });
  expect(shaped(['c-open', 'c-open-more', 'd-open-more', 'g-x-y', 'a-b'], ['c-[^-]+', 'd-[^-]+-more', 'g-.+'])).toEqual(['c-open', 'd-open-more', 'g-x-y']);
});

test('a number is printed as it is, and the catalogue chooses by numbers, flags and what is missing', () => {
  expect([t('plan-left', { jobs: 1 }), t('plan-left', { jobs: 0 }), t('plan-left', { jobs: 12345 })]).toEqual(['1 job left', '0 jobs left', '12345 jobs left']);
  expect(t('sprockets-links', { links: 118, stays: true })).toBe('118 links, chain stays');
  expect(t('sprockets-links', { links: 118, stays: false })).toBe('118 links, another chain');
  expect(t('sprockets-links', { links: 118, stays: null })).toBe('118 links');
  expect(t('photos-open', { caption: '{ $x }' })).toBe('Photo: { $x }');
  expect(t('nothing-of-it' as 'app-name')).toBe('nothing-of-it');
});

test('a list has its keys in the order of the catalogue, and knows what is none', () => {
  expect(keys('job-state')).toEqual(['open', 'begun', 'done']);
  expect(choices('end')).toEqual([
    { value: 'front', word: 'Front' },
    { value: 'rear', word: 'Rear' },
  ]);
  expect([keyOf('end', 'rear'), keyOf('end', 'top'), keyOf('end', null)]).toEqual(['rear', null, null]);
});

// What the core says, in words; numbers as the other renderer of the catalogue writes them (`bindings/words`).
import { afterEach, expect, test } from 'vitest';
import figures from '../../../../fixtures/words/figures.json';
import type { Unit } from '../../src/door/wire.ts';
import { device, shown, unitCard, withSymbol, type Decimals } from '../../src/words/numbers.ts';
import { speak } from '../../src/words/spoken.ts';
import { say, worded, type Argument, type RawMessage } from '../../src/words/messages.ts';

afterEach(() => {
  device.shownIn = (unit) => unit;
  speak(null);
});

const said = (messageId: string, values: Record<string, Argument> = {}): RawMessage => ({
  messageId,
  arguments: Object.entries(values).map(([name, value]) => ({ name, value })),
});
const mm = (value: number): Argument => ({ kind: 'quantity', value, unit: 'millimetre' });
const text = (of: string): Argument => ({ kind: 'text', text: of });
const joined = (items: RawMessage[], style: 'and' | 'sentences') => said('joined', { items: { kind: 'several', items, style } });

test('a refusal gets its label, its number and its range', () => {
  const label: Argument = { kind: 'message', message: said('as-entered', { text: text('Wheel travel') }) };
  const refused = said('refused-out-of-range', { label, value: mm(-1.25), min: mm(500), max: mm(3000) });
  expect(say(refused)).toBe('Wheel travel: −1.25\u00a0mm is outside 500 to 3\u202f000\u00a0mm');
});

test('a quantity is said in the unit that the device shows', () => {
  device.shownIn = (unit) => (unit === 'millimetre' ? 'inch' : unit);
  const range = { label: text('Slack'), value: mm(25.4), min: mm(0), max: mm(50.8) };
  expect(say(said('refused-out-of-range', range))).toBe('Slack: 1\u00a0in is outside 0 to 2\u00a0in');
});

test('lists and sentences are joined by the language', () => {
  const [one, two, three] = ['tank', 'seat', 'chain'].map((name) => said('as-entered', { text: text(name) })) as [RawMessage, RawMessage, RawMessage];
  expect(say(joined([one, two, three], 'and'))).toBe('tank, seat and chain');
  expect(say(joined([one, two], 'sentences'))).toBe('tank seat');
});

test('what has no words shows its id, and an answer keeps everything else', () => {
  const answer = { bikes: [{ name: 'Tern', text: said('nobody-says-this') }], count: 3, none: null };
  expect(worded(answer)).toEqual({ bikes: [{ name: 'Tern', text: 'nobody-says-this' }], count: 3, none: null });
});

const cases = figures as { value: number; unit: Unit; decimals: Decimals; text: string }[];
const written = ({ value, unit, decimals }: (typeof cases)[0]) => withSymbol(shown(value, unit, decimals).number, unitCard(unit).symbol);

test('a thousand figures are written as the other renderer writes them', () => {
  expect(cases.length).toBeGreaterThan(1000);
  expect(cases.filter((figure) => written(figure) !== figure.text).map((figure) => [figure, written(figure)])).toEqual([]);
});

test('a thousand figures are written with the signs of a language, as the other renderer writes them', () => {
  speak({ tag: 'de', pages: {}, core: { 'number-decimal': ',', 'number-group': '.' } });
  const inLanguage = (text: string) => text.replace('.', ',').replaceAll('\u202f', '.');
  expect(cases.filter((figure) => written(figure) !== inLanguage(figure.text)).map((figure) => [figure, written(figure)])).toEqual([]);
});

// The vectors in the browser: the same formulas with the same answers as in Rust, Python and Kotlin.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'smol-toml';
import { settled } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

const FOLDER = new URL('../../fixtures/vectors', import.meta.url).pathname;

interface Case {
  name: string;
  formula: { kind: string };
  gives?: Record<string, number>;
  within?: number;
  refuses?: { code: string; field?: string };
}

interface Answer {
  figures?: { name: string; value: number }[];
  refusal?: { code: string; field?: string };
}

const cases: Case[] = (readdirSync(FOLDER, { recursive: true }) as string[])
  .filter((name) => name.endsWith('.toml'))
  .flatMap((name) => (parse(readFileSync(join(FOLDER, name), 'utf8')) as unknown as { case: Case[] }).case);

/** What is wrong with an answer, or nothing. */
function fault({ name, gives = {}, within = 0, refuses }: Case, answer: Answer): string[] {
  if (refuses) {
    const same = answer.refusal?.code === refuses.code && (!refuses.field || answer.refusal.field === refuses.field);
    return same ? [] : [`${name}: ${JSON.stringify(answer)}, wanted a refusal ${JSON.stringify(refuses)}`];
  }
  return Object.entries(gives).flatMap(([figure, wanted]) => {
    const found = answer.figures?.find((one) => one.name === figure)?.value;
    const near = found !== undefined && Math.abs(found - wanted) <= within;
    return near ? [] : [`${name}: ${figure} is ${found}, wanted ${wanted} within ${within}; ${JSON.stringify(answer.refusal)}`];
  });
}

test('every vector gives the same answer in the browser', async ({ page }) => {
  expect(cases.length).toBeGreaterThan(100);
  await page.goto('./');
  await settled(page);
  const answers: Answer[] = await page.evaluate(async (formulas) => {
    const door = (window as unknown as { layshaft: { ask(query: object): Promise<object> } }).layshaft;
    const ask = (formula: object) => door.ask({ kind: 'evaluate', formula }).catch(({ code, field }) => ({ refusal: { code, field } }));
    return Promise.all(formulas.map(ask));
  }, cases.map((one) => one.formula));
  expect(cases.flatMap((one, at) => fault(one, answers[at] ?? {}))).toEqual([]);
});

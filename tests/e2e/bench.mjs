// Measures what a phone feels: the cold start without a network on a slow processor, the size of the first visit, and the
// time of each call through the door. Prints each figure beside its goal and fails nothing: a busy machine misses goals that a quiet one meets.
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync } from 'node:zlib';
import { address, switchOn } from './lib/browser.mjs';
import { startDate } from './lib/clock.mjs';
import { buildEmptyPage } from './lib/empty.mjs';
import { serve } from './lib/serve.mjs';
import { goTo, loadDemo, settled } from './lib/steps.mjs';

const GOALS = { coldStartMs: 1500, transferredMB: 2.0, doorMs: 5, planMs: 150 };
const SLOWER = 4;
const ROUNDS = 7;

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

async function withBrowser(profile, work) {
  const { context, page } = await switchOn(profile, startDate);
  try {
    return await work(context, page);
  } finally {
    await context.close();
  }
}

/** Milliseconds from the start of the navigation until `selector` stands on the page; the browser is started anew each time. */
async function coldStart(profile, url, selector) {
  return withBrowser(profile, async (context, page) => {
    await context.setOffline(true);
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    await page.addInitScript((wanted) => {
      const look = () => {
        if (!document.querySelector(wanted)) return requestAnimationFrame(look);
        window.usableMs = performance.now();
      };
      look();
    }, selector);
    await page.goto(url);
    await page.waitForFunction(() => window.usableMs !== undefined);
    return page.evaluate(() => window.usableMs);
  });
}

async function measureStart(url, selector, prepare) {
  const profile = await mkdtemp(join(tmpdir(), 'layshaft-bench-'));
  try {
    await withBrowser(profile, async (_, page) => {
      await page.goto(url);
      await prepare?.(page);
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    });
    const times = [];
    for (let round = 0; round < ROUNDS; round += 1) times.push(await coldStart(profile, url, selector));
    return { median: median(times), times: times.map(Math.round) };
  } finally {
    await rm(profile, { recursive: true, force: true });
  }
}

/** What the first visit brings over the network: every file that the service worker keeps, with brotli. */
async function transferred() {
  const dist = fileURLToPath(new URL('../../mobile-shell/ui/dist/', import.meta.url));
  const worker = await readFile(join(dist, 'sw.js'), 'utf8');
  const listed = [...worker.matchAll(/url:\s*"([^"]+)"/g)].map(([, url]) => url);
  const workbox = [...worker.matchAll(/"\.\/(workbox-[0-9a-f]+)"/g)].map(([, name]) => `${name}.js`);
  const files = [...new Set([...listed, ...workbox, 'sw.js'])];
  const sizes = await Promise.all(files.map(async (file) => [file, brotliCompressSync(await readFile(join(dist, file))).length]));
  return { sizes, bytes: sizes.reduce((sum, [, size]) => sum + size, 0) };
}

/** Begins a search for a fault in the lighting circuit and gives the address of its question. */
async function searchInACircuit(page) {
  await goTo(page, '#/numbers/faults');
  await page.locator('button.row', { hasText: 'Headlamp, tail lamp or dash' }).first().click();
  await page.locator('button.choice').first().waitFor();
  await settled(page);
  return page.evaluate(() => location.hash);
}

/**
 * Times the plan in the worker, a minute later each time: a plan is kept for the minute, so each is worked out anew, as it is
 * after a new fact. Runs inside the worker, which the browser cannot slow down as it can the page.
 */
function planAnew(rounds) {
  const times = [];
  for (let round = 1; round <= rounds; round += 1) {
    const asked = JSON.parse(self.planAsked.json);
    asked.moment.nowMs += round * 60_000;
    const start = performance.now();
    self.again({ data: { ...self.planAsked, json: JSON.stringify(asked) } });
    times.push(performance.now() - start);
  }
  return times;
}

/** Every query that the pages ask on the demo bike, timed inside the worker: from its message to its answer. */
async function doorCalls() {
  const profile = await mkdtemp(join(tmpdir(), 'layshaft-bench-'));
  const ROUTES = ['#/today', '#/plan', '#/plan/ready-made', '#/numbers/gearing', '#/numbers/load', '#/numbers/circuits', '#/numbers/circuits?circuit=whole', '#/numbers/faults', '#/numbers/cure', '#/inspect', '#/bike', '#/bike/shelf', '#/bike/history/drive/standard%2Fdrive'];
  try {
    return await withBrowser(profile, async (_, page) => {
      await page.goto(address);
      await loadDemo(page);
      const [worker] = page.workers();
      await worker.evaluate(() => {
        self.calls = [];
        const answer = self.onmessage;
        self.again = answer;
        self.onmessage = (event) => {
          const start = performance.now();
          answer(event);
          const took = performance.now() - start;
          if (event.data.kind !== 'ask') return;
          const { kind, circuit, search } = JSON.parse(event.data.json).query;
          if (kind === 'plan') self.planAsked = event.data;
          self.calls.push([[kind, circuit, search && 'of a search in a circuit'].filter(Boolean).join(' '), took]);
        };
      });
      await goTo(page, '#/plan');
      const plan = median(await worker.evaluate(planAnew, ROUNDS * 3));
      const search = await searchInACircuit(page);
      for (let round = 0; round < ROUNDS; round += 1) for (const route of [...ROUTES, search]) await goTo(page, route);
      const kinds = new Map();
      for (const [kind, time] of await worker.evaluate(() => self.calls)) kinds.set(kind, [...(kinds.get(kind) ?? []), time]);
      const calls = [...kinds].map(([name, times]) => ({ name, median: median(times), count: times.length }));
      return { plan, calls: calls.sort((a, b) => b.median - a.median) };
    });
  } finally {
    await rm(profile, { recursive: true, force: true });
  }
}

const size = await transferred();
console.log(`transferred on the first visit, brotli: ${(size.bytes / 1e6).toFixed(2)} MB (goal ${GOALS.transferredMB} MB)`);
for (const [file, bytes] of size.sizes.sort((a, b) => b[1] - a[1]).slice(0, 6)) console.log(`  ${(bytes / 1e3).toFixed(0).padStart(6)} kB  ${file}`);

const { plan, calls } = await doorCalls();
console.log(`door calls in the browser's worker, median (goal ${GOALS.doorMs} ms):`);
for (const { name, median: time, count } of calls) console.log(`  ${time.toFixed(1).padStart(6)} ms  ${name} (${count} calls)`);
console.log(`plan worked out anew in the worker: ${plan.toFixed(1)} ms, so ${(SLOWER * plan).toFixed(0)} ms on a processor ${SLOWER} times slower (goal ${GOALS.planMs} ms)`);

const server = await serve(await buildEmptyPage());
const empty = await measureStart(server.address, '#page-title');
server.close();
const ours = await measureStart(`${address}#/today`, 'a[href^="#/bench/"]', loadDemo);
console.log(`cold start to usable Today, offline, processor ${SLOWER} times slower: ${ours.median.toFixed(0)} ms (goal ${GOALS.coldStartMs} ms; ${ours.times.join(', ')})`);
console.log(`empty page of the same stack in the same run: ${empty.median.toFixed(0)} ms (${empty.times.join(', ')}); ratio ${(ours.median / empty.median).toFixed(2)}`);

const missed = [
  [size.bytes / 1e6 > GOALS.transferredMB, 'transferred size'],
  [ours.median > GOALS.coldStartMs, 'cold start'],
  [SLOWER * plan > GOALS.planMs, 'plan worked out anew'],
  [calls.some((call) => call.median > GOALS.doorMs), 'door calls'],
].flatMap(([beyond, what]) => (beyond ? [what] : []));
console.log(missed.length > 0 ? `Beyond the goal: ${missed.join(', ')}.` : 'Every goal is met.');

// A Saturday from the first run to the wiped phone: everything that must be there at the end is there.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { address, switchOn } from './lib/browser.mjs';
import { receive, saveBundle } from './lib/bundles.ts';
import { stopClockAt } from './lib/clock.mjs';
import { goTo, loadDemo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, test, Watch } from './lib/watch.ts';

const MORNING = new Date('2026-11-28T09:00:00+01:00');
const NEXT_AFTERNOON = new Date('2026-11-29T15:00:00+01:00');
const HOURS_BETWEEN = 30;
const COAT = 'Side cover, outside';

/** Opens the browser with its own profile, as a phone is switched on: what it kept is still there. */
async function open(profile: string, now: Date, watch: Watch): Promise<{ context: BrowserContext; page: Page }> {
  const { context, page } = await switchOn(profile, (context) => stopClockAt(context, now));
  watch.on(context);
  await page.goto('./');
  return { context, page };
}

async function startCure(page: Page) {
  await goTo(page, '#/numbers/cure');
  await press(page, 'Start the clock');
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('On what').fill(COAT);
  await sheet.getByRole('button', { name: 'Start the clock' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(COAT);
  await expect(page.locator('svg', { hasText: '0%' }).first()).toBeVisible();
}

/** Hours that are left on the can, from the reason on the page. */
async function leftOnCan(page: Page): Promise<number> {
  const reason = (await page.getByText(/h on the can at/).first().textContent()) ?? '';
  return Number(/([\d.]+)\s*h on the can/.exec(reason)?.[1]);
}

async function fitSprockets(page: Page) {
  await goTo(page, '#/numbers/gearing');
  await page.getByRole('button', { name: 'Gearbox sprocket: one more' }).click();
  await page.getByRole('button', { name: /^Wheel sprocket: .* Type/ }).click();
  await typeOnPad(page, '38');
  await press(page, 'Try on the bike');
  const ripple = page.getByRole('dialog');
  await expect(ripple).toContainText(/km\/h/);
  await expect(ripple).toContainText(/links/i);
  await expect(ripple).toContainText(/speedometer/i);
  await expect(ripple).toContainText('crosses a limit');
  await ripple.getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('16 and 38 teeth are fitted.')).toBeVisible();
}

/** Answers the walk-through from its beginning: eleven items in words, and the first one that measures by a number. */
async function answerTwelve(page: Page): Promise<number> {
  await goTo(page, '#/inspect');
  await press(page, 'Begin the walk-through');
  let given = 0;
  let measured = false;
  while (given < 12) {
    await settled(page);
    const title = (await page.getByRole('heading', { level: 2 }).textContent()) ?? '';
    const type = page.getByRole('button', { name: 'Type it', exact: true });
    if (!measured && (await type.count())) {
      await type.click();
      await typeOnPad(page, '5');
      await expect(page.getByRole('status').filter({ hasText: /Meets it|Would fail/ })).toBeVisible();
      measured = true;
      given += 1;
      await page.getByRole('link', { name: 'Next', exact: true }).click();
    } else if ((await type.count()) || !(await page.getByRole('status').filter({ hasText: 'Not known' }).count())) {
      await page.getByRole('link', { name: 'Next', exact: true }).click();
    } else {
      await page.getByRole('button', { name: given % 4 === 3 ? 'Not good' : 'Good', exact: true }).click();
      given += 1;
    }
    await expect(page.getByRole('heading', { level: 2, name: title, exact: true })).toHaveCount(0);
  }
  expect(measured, 'one of the twelve is measured').toBe(true);
  return given;
}

async function counts(page: Page): Promise<Record<string, number>> {
  await goTo(page, '#/inspect');
  const cells = await page.locator('dl', { hasText: 'not asked' }).locator('div').allTextContents();
  return Object.fromEntries(cells.map((cell) => [cell.replace(/\d+/g, '').trim(), Number(/\d+/.exec(cell)?.[0])]));
}

test('the Saturday: cure, close, reopen, fit, inspect, save, wipe, take in', async ({ watch }) => {
  const profile = await mkdtemp(join(tmpdir(), 'layshaft-saturday-'));
  let { context, page } = await open(profile, MORNING, watch);
  try {
    // First run, ready for offline use; from here on there is no network.
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await context.setOffline(true);
    await loadDemo(page);
    await startCure(page);
    const atStart = await leftOnCan(page);
    await context.close();

    // The next afternoon, still without a network.
    ({ context, page } = await open(profile, MORNING, watch));
    await context.setOffline(true);
    await stopClockAt(context, NEXT_AFTERNOON);
    await page.reload();
    await settled(page);
    await page.getByRole('region', { name: 'Curing' }).getByRole('link', { name: COAT }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(COAT);
    const advanced = atStart - (await leftOnCan(page));
    expect(advanced, 'the cure went on').toBeGreaterThan(1);
    expect(advanced, 'and slower than the wall clock, because the garage is cold').toBeLessThan(HOURS_BETWEEN - 1);

    await fitSprockets(page);
    await answerTwelve(page);
    const before = await counts(page);
    expect(before.fail).toBeGreaterThanOrEqual(1);
    expect(before['not known']).toBeGreaterThanOrEqual(1);
    await press(page, 'Summary');
    await expect(page.getByRole('heading', { name: 'Stoppers: do not ride' })).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Would fail' })).toBeVisible();

    const bundle = await saveBundle(page);

    // The phone is wiped: nothing of it is left.
    await context.setOffline(false);
    await page.goto('about:blank');
    const session = await context.newCDPSession(page);
    await session.send('Storage.clearDataForOrigin', { origin: new URL(address).origin, storageTypes: 'all' });
    await page.goto(address);
    await expect(page.getByRole('button', { name: /demo bike/ })).toBeVisible();

    await press(page, 'Take in a bundle from another device');
    await settled(page);
    await receive(page, 'saturday.layshaft', bundle);
    await expect(page.getByText('Taken in.')).toBeVisible();
    await press(page, 'Today');
    await settled(page);

    // Everything is there: the clock, the sprockets, the answers.
    await expect(page.getByRole('region', { name: 'Curing' }).getByRole('link', { name: COAT })).toBeVisible();
    expect(await counts(page)).toEqual(before);
    await goTo(page, '#/bike/spec');
    const row = (name: string) => page.getByRole('row', { name: new RegExp(name) }).first();
    await expect(row('Gearbox sprocket')).toContainText('16 teeth');
    await expect(row('Wheel sprocket')).toContainText('38 teeth');
  } finally {
    await context.close();
    await rm(profile, { recursive: true, force: true });
  }
});

// The clock that every other test goes by.
import { START_MS } from '../moment.mjs';
import { clockOf, stopClockAt } from './lib/clock.mjs';
import { goTo, settled } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

test('every test begins at the same moment in the same zone, and time runs on, also across a reload and in a second tab', async ({ page, context }) => {
  const begun = performance.now();
  await openDemo(page);
  const first = await clockOf(page);
  await page.reload();
  await settled(page);
  const second = await context.newPage();
  await second.goto('./#/today');
  await settled(second);
  const [reloaded, beside] = [await clockOf(page), await clockOf(second)];
  // A clock of the page may be set a moment before or after that of the test.
  const passed = performance.now() - begun + 2_000;
  for (const now of [first, reloaded, beside]) {
    expect(now).toBeGreaterThanOrEqual(START_MS);
    expect(now).toBeLessThan(START_MS + passed);
  }
  expect(reloaded).toBeGreaterThan(first);
  // Ten o'clock on a Saturday in January.
  expect(await page.evaluate((at) => new Date(at).toString(), START_MS)).toMatch(/^Sat Jan 10 2026 10:00:00 GMT\+0100/);
});

test('what is noted bears the moment of the test, not of the machine', async ({ page }) => {
  await openDemo(page);
  await stopClockAt(page, START_MS + 26 * 3_600_000);
  await goTo(page, '#/bike/garage');
  await page.getByRole('button', { name: 'Note it' }).click();
  await expect(page.getByText(/is noted/)).toBeVisible();
  await goTo(page, '#/bike/garage');
  await expect(page.getByText(/Sun 11 Jan, 12:00/).first()).toBeVisible();
});

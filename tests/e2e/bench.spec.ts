// At the bench: one step at a time, with a knuckle.
import { START_MS } from '../moment.mjs';
import { stopClockAt } from './lib/clock.mjs';
import { press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

test.beforeEach(async ({ page, context }) => {
  await context.addInitScript(() => {
    const locks: string[] = [];
    Object.assign(window, { askedLocks: locks });
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: async (kind: string) => (locks.push(kind), Object.assign(new EventTarget(), { release: async () => {} })),
      },
    });
  });
  await openDemo(page);
});

test('the halves turn the page and mark nothing, Done marks a step, and the sheet behind the last one finishes the job', async ({ page }) => {
  await page.getByRole('link', { name: /^Start at the bench/ }).click();
  await settled(page);
  const title = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  const step = page.locator('.step p').first();
  const first = (await step.textContent()) ?? '';
  await expect(page.locator('dd')).toHaveText(/^1 of/);

  await page.touchscreen.tap(320, 420);
  await expect(page.locator('dd')).toHaveText(/^2 of/);
  await expect(step).not.toHaveText(first);
  await page.touchscreen.tap(60, 420);
  await expect(step).toHaveText(first);

  // Reading ahead marked nothing; what was done stays done across a reload.
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('dd')).toHaveText(/^2 of/);
  await page.reload();
  await settled(page);
  await expect(page.locator('dd')).toHaveText(/^1 of/);
  const next = page.getByRole('button', { name: 'Done', exact: true });
  await next.click();
  await expect(page.getByText('Step 1 is done.')).toBeVisible();
  await page.reload();
  await settled(page);
  await expect(page.locator('dd')).toHaveText(/^2 of/);
  const finish = page.getByRole('button', { name: 'Finish' });
  const steps = Number((await page.locator('dd').textContent())?.split(' ').at(-1));
  for (let at = 2; at <= steps; at += 1) {
    await next.click();
    if (at < steps) await expect(page.locator('dd')).toHaveText(new RegExp(`^${at + 1} of`));
  }
  await finish.click();
  await page.getByRole('dialog').getByRole('button', { name: 'Done', exact: true }).click();
  await expect(page.getByRole('dialog')).toContainText(`“${title}” is done.`);
  await page.reload();
  await settled(page);
  await expect(page.locator('.step')).toContainText(`“${title}” is done.`);
});

test('the screen is kept on, and only while at the bench', async ({ page }) => {
  const asked = () => page.evaluate(() => (window as unknown as { askedLocks: string[] }).askedLocks);
  expect(await asked()).toEqual([]);
  await page.getByRole('link', { name: /^Start at the bench/ }).click();
  await expect.poll(asked).toEqual(['screen']);
  await expect(page.getByText(/The screen stays on/)).toBeVisible();
});

test('a clock starts from its step, survives a reload, and says when the time is up', async ({ page }) => {
  await page.goto('./#/plan/new');
  await settled(page);
  await page.getByLabel('What is done').fill('Line the tank');
  await press(page, 'Add a step');
  await page.getByLabel('Step 1', { exact: true }).fill('Turn the tank until every side is wet.');
  await page.getByRole('button', { name: /^Clock from this step/ }).click();
  await typeOnPad(page, '35');
  await press(page, 'Save');
  await page.getByRole('link', { name: 'Start at the bench' }).click();
  await page.getByRole('button', { name: 'Start the 35 min clock' }).click();
  await expect(page.getByRole('timer')).toHaveText(/\d+:\d\d/);
  await page.reload();
  await settled(page);
  await expect(page.getByRole('timer')).toHaveText(/\d+:\d\d/);
  await stopClockAt(page, START_MS + 12 * 3_600_000);
  await expect(page.getByText('Time is up.')).toBeVisible();
  await page.getByRole('button', { name: 'Stop the clock' }).click();
  await expect(page.getByRole('timer')).toHaveCount(0);
});

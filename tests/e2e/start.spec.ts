// The first minutes with a bike of one's own: from the first start to a plan with a ready date, and every tap counted.
import type { Page } from '@playwright/test';
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

/** Taps and typed letters from the first start to a ready date. */
const MOST_TAPS = 45;
const CLICKS_AND_KEYS = ['pointerup', 'keydown'];

/** Counts what a hand does: fingers lifted and keys pressed. The sum outlives a page that is loaded anew. */
async function countTaps(page: Page) {
  await page.addInitScript((events) => {
    const count = () => sessionStorage.setItem('taps', String(Number(sessionStorage.getItem('taps') ?? 0) + 1));
    for (const event of events) addEventListener(event, count, true);
  }, CLICKS_AND_KEYS);
  return () => page.evaluate(() => Number(sessionStorage.getItem('taps')));
}

const step = (page: Page, title: string) => page.getByRole('heading', { level: 1, name: title }).waitFor();

test('from the first start to a plan with a ready date in few taps', async ({ page }, info) => {
  const taps = await countTaps(page);
  await page.goto('./');
  await press(page, 'Start my bike');
  await page.getByLabel('Name of the bike').click();
  await page.keyboard.type('Shed find');
  await press(page, 'Next');

  await step(page, 'What kind of bike is it?');
  await page.getByRole('radio', { name: 'Two-stroke, 6 V with battery, two drum brakes' }).click();
  await page.getByRole('group', { name: 'Indicators' }).getByRole('radio', { name: 'Yes' }).click();
  await press(page, 'Next');

  await step(page, 'What is to be done?');
  await page.getByRole('checkbox', { name: /^Stood for years/ }).click();
  await page.getByRole('checkbox', { name: /^New tyres and chain/ }).click();
  await press(page, 'Next');

  await step(page, 'When do you work on it?');
  await page.getByRole('radio', { name: 'Saturdays', exact: true }).click();
  await press(page, 'Next');

  await step(page, 'Where will it be inspected?');
  await page.getByRole('radio', { name: 'Great Britain' }).click();
  await press(page, 'Next');

  await step(page, 'Today');
  const done = await taps();
  info.annotations.push({
    type: 'taps',
    description: `${String(done)} from the first start to a ready date (at most ${String(MOST_TAPS)})`,
  });
  console.log(`taps from the first start to a ready date: ${String(done)} (at most ${String(MOST_TAPS)})`);
  expect(done).toBeGreaterThan(15);
  expect(done).toBeLessThanOrEqual(MOST_TAPS);
  await expect(page.getByText('Not said yet')).toHaveCount(0);
  await expect(page.locator('.held')).toBeVisible();
  await goTo(page, '#/plan?view=stages');
  await expect(page.getByRole('link', { name: /^New shoes in a drum brake/ })).toBeVisible();
  await expect(page.getByRole('link', { name: /caliper|Cooling system|Valve clearance/ })).toHaveCount(0);
  await goTo(page, '#/numbers/load');
  await expect(page.getByText(/Headlamp/).first()).toBeVisible();
});

test('whoever closes the app half way finds the next useful thing on Today', async ({ page }) => {
  await page.goto('./');
  await press(page, 'Start my bike');
  await page.getByLabel('Name of the bike').fill('Shed find');
  await press(page, 'Next');
  await step(page, 'What kind of bike is it?');
  await goTo(page, '#/today');
  await page.reload();
  await settled(page);
  await expect(page.getByRole('link', { name: /^When do you work on it/ })).toBeVisible();
  await page.getByRole('link', { name: /^What kind of bike is it/ }).click();
  await step(page, 'What kind of bike is it?');
  await expect(page.getByRole('button', { name: 'Next' })).toBeDisabled();
  await page.getByRole('radio', { name: 'Two-stroke, 12 V, disc in front' }).click();
  await press(page, 'Next');
  await step(page, 'Today');
  await expect(page.getByRole('link', { name: /^What kind of bike is it/ })).toHaveCount(0);
  await press(page, 'Say what is to be done');
  await step(page, 'What is to be done?');
  await page.getByRole('checkbox', { name: /^Brakes all round/ }).click();
  await press(page, 'Next');
  await step(page, 'Today');
  await expect(page.getByText(/No job is written down yet/)).toHaveCount(0);
});

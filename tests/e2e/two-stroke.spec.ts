// The small two-stroke of the start page: 6 V from a lighting coil, no battery. Every number page opens, and none asks for a battery.
import type { Page } from '@playwright/test';
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

const answer = (page: Page) => page.locator('.answer').first();

test.beforeEach(async ({ page }) => {
  await page.goto('./');
  await press(page, 'Look at a small two-stroke, 6 V without a battery');
  await page.waitForFunction(() => location.hash === '#/today');
  await settled(page);
  await page.getByRole('button', { name: 'Close' }).click();
});

test('its lamps rise with the revs, and a blown one takes the others with it', async ({ page }) => {
  await goTo(page, '#/numbers/load');
  await page.locator('label', { hasText: /^\s*Lights\s*$/ }).click();
  await expect(answer(page)).toContainText('the lamps burn fully from here');
  await expect(page.getByText('when one lamp burns out, the others get up to')).toBeVisible();
  await expect(page.getByText('There is no battery: with the engine off nothing lights')).toBeVisible();
  await page.locator('label', { hasText: /^\s*By day\s*$/ }).click();
  await expect(answer(page)).toContainText('nothing on the lighting coil is lit');
});

test('charging asks for the voltage at the headlamp and for nothing of a battery', async ({ page }) => {
  await goTo(page, '#/numbers/charging');
  await expect(page.getByText('There is no battery to charge')).toBeVisible();
  await expect(page.getByText('Meter on alternating volts, at the headlamp').first()).toBeVisible();
  await expect(page.getByText('Battery, after hours of rest')).toHaveCount(0);
  await expect(page.getByText('Cell 1')).toHaveCount(0);
});

test('its form asks for no battery', async ({ page }) => {
  await goTo(page, '#/bike/spec/standard/supply');
  await expect(page.locator('form')).toContainText('lighting coil straight to the lamps, no battery');
  await expect(page.locator('form')).not.toContainText('Peukert');
});

test('what the bike does not have stands folded below what can be wrong with it', async ({ page }) => {
  await goTo(page, '#/numbers/faults');
  await expect(page.getByRole('button', { name: /^The engine turns over but does not start/ })).toBeVisible();
  const starter = page.getByRole('button', { name: /^The starter does not turn/ });
  await expect(starter).toBeHidden();
  await page.getByText(/more, of what this bike does not have/).click();
  await expect(starter).toBeVisible();
});

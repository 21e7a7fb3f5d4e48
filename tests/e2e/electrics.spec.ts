// Lamps, flashers and charging: what the swap to LED indicators does, and what four readings of a meter say.
import type { Page } from '@playwright/test';
import { tryLed } from './lib/pages.mjs';
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

const answer = (page: Page) => page.locator('.answer').first();
const field = (page: Page, label: string) => page.locator('.field', { hasText: new RegExp(`^\\s*${label}`) });

async function type(page: Page, label: string, text: string) {
  await field(page, label).getByRole('button').click();
  await typeOnPad(page, text);
  await settled(page);
}

test.beforeEach(async ({ page }) => {
  await openDemo(page);
});

test('LED indicators stop the thermal flasher, light both sides through one pilot, and both cures are compared', async ({ page }) => {
  await goTo(page, '#/numbers/lamps');
  await expect(answer(page)).toContainText('flashes a minute');
  await tryLed(page);
  await settled(page);
  await expect(answer(page)).toContainText(/does not flash|too fast/);
  await expect(page.getByRole('heading', { name: 'Tried, with load resistors' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Tried, with an electronic flasher' })).toBeVisible();
  await expect(page.getByText('Lamps of the other side').first()).toBeVisible();

  await page.getByRole('button', { name: /^Flasher/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: /electronic with its own earth/ }).click();
  await page.getByRole('button', { name: /^Pilot lamp/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: /through two diodes/ }).click();
  await settled(page);
  await expect(answer(page)).toContainText('within the rule');
  await press(page, 'Try on the bike');
  const ripple = page.getByRole('dialog');
  await expect(ripple).toContainText(/flash/i);
  await ripple.getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('It is fitted.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'As fitted', exact: true })).toBeDisabled();
});

test('flashes that were counted stand against the rule', async ({ page }) => {
  await goTo(page, '#/numbers/lamps');
  await type(page, 'Flashes counted', '20');
  await type(page, 'Time that they took', '15');
  await expect(page.locator('.answer').last()).toContainText('80');
  await type(page, 'Time that they took', '0');
  await expect(field(page, 'Time that they took').getByRole('alert')).toContainText('0.5 to 600 s');
});

test('four readings tell a weak alternator from a flat battery; what is not measured is not good', async ({ page }) => {
  await goTo(page, '#/numbers/charging');
  await type(page, 'Battery, after hours of rest', '12.7');
  await expect(answer(page)).toContainText('not enough measured');
  await type(page, 'At idle', '13.2');
  await type(page, 'At 5,000 rpm', '14.4');
  await type(page, 'Current with the key off', '0.5');
  await expect(answer(page)).toContainText('charges');
  await expect(answer(page)).toContainText('4 of 4 measured');
  await type(page, 'At 5,000 rpm', '12.6');
  await type(page, 'At idle', '12.5');
  await expect(answer(page)).toContainText('does not charge');
  await type(page, 'At idle', '90');
  await expect(field(page, 'At idle').getByRole('alert')).toContainText('0 to 40 V');
});

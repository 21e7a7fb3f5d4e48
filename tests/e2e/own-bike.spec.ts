// A bike entered by hand, 6 V, drums at both ends: what is entered once is known everywhere.
import type { Page } from '@playwright/test';
import { goTo, press, typeOnPad } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

/** A bike of which only its name, its voltage and its brakes are known. */
async function barnFind(page: Page) {
  await page.goto('./');
  await press(page, 'Start my bike');
  await page.getByLabel('Name of the bike').fill('Barn find');
  await press(page, 'Next');
  await press(page, 'Put it on the shelf');
  await page.locator('main[data-page="today"]').waitFor();
  await goTo(page, '#/bike/spec/standard/supply');
  await page.getByRole('button', { name: /^System/ }).click();
  await typeOnPad(page, '6');
  await press(page, 'Save');
  for (const end of ['front', 'rear']) {
    await page.locator('main[data-page="bike/spec"]').waitFor();
    await goTo(page, `#/bike/spec/standard/${end}-brake`);
    await page.getByRole('button', { name: /^Kind/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: /^drum/i }).click();
    await press(page, 'Save');
  }
  await page.locator('main[data-page="bike/spec"]').waitFor();
}

/** Enters what is usual for a lamp, without a figure typed. */
async function addUsual(page: Page, what: string) {
  await goTo(page, '#/bike/slot/standard/consumer');
  await page.getByRole('button', { name: /^What it is/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: new RegExp(`^${what}`) }).click();
  await expect(page.getByText(/Typical figures/)).toBeVisible();
  await press(page, 'Save');
  await page.locator('main[data-page="bike/spec"]').waitFor();
}

test('a lamp is entered by what it is, and stands on the lamp page, in the circuits and in the load', async ({ page }) => {
  await barnFind(page);
  await addUsual(page, 'Headlamp');
  await addUsual(page, 'Indicators');
  await expect(page.getByRole('link', { name: /^Indicators/ }).first()).toContainText('2 a side');
  await goTo(page, '#/numbers/lamps');
  await expect(page.getByRole('button', { name: /^Place/ })).toContainText('Indicators');
  await goTo(page, '#/numbers/load');
  await expect(page.getByRole('button', { name: /^Headlamp/ })).toContainText('25');

  await goTo(page, '#/bike/slot/standard/consumer');
  await page.getByRole('button', { name: /^What it is/ }).click();
  const roles = page.getByRole('dialog');
  await expect(roles.getByRole('button', { name: /^Tail lamp/ })).toBeVisible();
  await expect(roles.getByRole('button', { name: /^Headlamp|^Indicators|^Rear indicators/ })).toHaveCount(0);
});

test('the inspection asks drums for no fluid, and an objection counts', async ({ page }) => {
  await barnFind(page);
  await goTo(page, '#/inspect/eu/item/brake.fluid');
  await expect(page.getByText(/Not asked: both brakes of this bike are drums/)).toBeVisible();
  await press(page, 'Not good');
  await page.locator('main[data-page="inspect/eu/item/brake.cylinders"]').waitFor();
  await goTo(page, '#/inspect/eu/item/brake.fluid');
  await expect(page.getByText(/Not asked: both brakes/)).toHaveCount(0);
  await goTo(page, '#/inspect/eu/item/brake.controls');
  await press(page, 'Good');
  await page.locator('main[data-page="inspect/eu/item/brake.cables-rods"]').waitFor();
  await goTo(page, '#/inspect/gb/item/brake.controls');
  await expect(page.getByText(/You answered this in the walk-through for European Union/)).toBeVisible();
});

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
  await page.getByRole('heading', { name: 'What kind of bike is it?' }).waitFor();
  await goTo(page, '#/bike/spec/standard/supply');
  await page.getByRole('button', { name: /^Voltage of the system/ }).click();
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
  await page
    .getByRole('dialog')
    .getByRole('button', { name: new RegExp(`^${what}`) })
    .click();
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
  await expect(
    roles.getByRole('button', {
      name: /^Headlamp|^Indicators|^Rear indicators/,
    }),
  ).toHaveCount(0);
});

test('the inspection asks drums for no fluid, and an objection counts', async ({ page }) => {
  await barnFind(page);
  await goTo(page, '#/inspect/eu/item/brake.fluid');
  await expect(page.getByText(/Not on this bike: both brakes are drums/)).toBeVisible();
  await press(page, 'Not good');
  await page.locator('main[data-page="inspect/eu/item/brake.cylinders"]').waitFor();
  await goTo(page, '#/inspect/eu/item/brake.fluid');
  await expect(page.getByText(/Not on this bike: both brakes/)).toHaveCount(0);
  await goTo(page, '#/inspect/eu/item/brake.controls');
  await press(page, 'Good');
  await page.locator('main[data-page="inspect/eu/item/brake.cables-rods"]').waitFor();
  await goTo(page, '#/inspect/gb/item/brake.controls');
  await expect(page.getByText(/You answered this in the walk-through for European Union/)).toBeVisible();
});

test('a row of numbers is typed without leaving the pad, and the rear end is copied from the front', async ({ page }) => {
  await barnFind(page);
  await goTo(page, '#/bike/spec/standard/drive');
  await page
    .getByRole('button', { name: /^Gearbox sprocket/ })
    .first()
    .click();
  for (const [teeth, next] of [
    ['15', /^Enter, and on to: Wheel sprocket/],
    ['41', /^Enter, and on to: Primary/],
  ] as const) {
    const pad = page.getByRole('dialog');
    for (const key of teeth) await pad.getByRole('button', { name: key, exact: true }).click();
    await pad.getByRole('button', { name: next }).click();
  }
  await expect(page.getByRole('dialog')).toHaveCount(1);
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('button', { name: /^Gearbox sprocket/ }).first()).toContainText('15');
  await expect(page.getByRole('button', { name: /^Wheel sprocket/ }).first()).toContainText('41');

  await goTo(page, '#/bike/spec/fitted/rear-wheel');
  await expect(page.getByRole('button', { name: 'As at the front' })).toHaveCount(0);
  await goTo(page, '#/bike/spec/standard/front-wheel');
  await page.getByLabel('Tyre', { exact: true }).fill('3.00-18');
  await press(page, 'Save');
  await page.locator('main[data-page="bike/spec"]').waitFor();
  await goTo(page, '#/bike/spec/standard/rear-wheel');
  await press(page, 'As at the front');
  await expect(page.getByLabel('Tyre', { exact: true })).toHaveValue('3.00-18');
});

test('another choice of what it is fills in other figures, until somebody enters one', async ({ page }) => {
  await barnFind(page);
  await goTo(page, '#/bike/slot/standard/consumer');
  const choose = async (what: RegExp) => {
    await page.getByRole('button', { name: /^What it is/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: what }).click();
  };
  await choose(/^Headlamp/);
  await expect(page.getByRole('button', { name: /^Power of one/ })).toContainText('25');
  await choose(/^Horn/);
  await expect(page.getByRole('button', { name: /^Power of one/ })).toContainText('15');
  await expect(page.getByLabel('Called')).toHaveValue('Horn');
  await page.getByRole('button', { name: /^Power of one/ }).click();
  await typeOnPad(page, '18');
  await choose(/^Ignition/);
  await expect(page.getByRole('button', { name: /^Power of one/ })).toContainText('18');
});

// Packages of ready-made jobs on a bike entered by hand: air-cooled, 6 V, drums at both ends.
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

test('a package brings only what suits in one tap, and comes back out with Undo', async ({ page }) => {
  await page.goto('./#/start/own');
  await settled(page);
  await page.getByLabel('Name of the bike').fill('Barn find');
  await press(page, 'Next');
  await page.getByRole('radio', { name: 'Four-stroke single, 6 V, two drum brakes' }).click();
  await press(page, 'Next');
  await page.getByRole('heading', { name: 'What is to be done?' }).waitFor();

  await goTo(page, '#/plan/ready-made');
  await expect(page.getByText('6 jobs are left out because of what the bike is')).toBeVisible();
  await page.getByRole('button', { name: /^Stood for years/ }).click();
  await expect(page.getByRole('dialog')).toContainText('Both brakes are drums.');
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Add \d+ jobs$/ })
    .click();
  await page.locator('main[data-page="plan"]').waitFor();
  await goTo(page, '#/plan?view=stages');
  await expect(page.getByRole('link', { name: /^New shoes in a drum brake/ })).toBeVisible();
  await expect(page.getByRole('link', { name: /caliper|Cooling system|Bleed/ })).toHaveCount(0);

  await goTo(page, '#/plan/ready-made');
  await page.getByRole('button', { name: /^Stood for years/ }).click();
  await expect(page.getByRole('dialog').getByRole('button', { name: 'Add 0 jobs' })).toBeDisabled();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await page.locator('.toast').getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', { name: /^Stood for years/ })).toContainText('jobs to add');
});

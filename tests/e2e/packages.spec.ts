// Packages of ready-made jobs on a bike entered by hand: air-cooled, 6 V, drums at both ends.
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

test('a package brings only what suits in one tap, and comes back out with Undo', async ({ page }) => {
  await page.goto('./#/start/own');
  await settled(page);
  await page.getByLabel('Name of the bike').fill('Barn find');
  await press(page, 'Next');
  await press(page, 'Skip this');
  await page.waitForFunction(() => !location.hash.startsWith('#/start'));
  await goTo(page, '#/bike/who');
  await page.getByRole('radio', { name: 'air', exact: true }).check();
  await press(page, 'Save');
  await page.locator('main[data-page="bike"]').waitFor();
  for (const end of ['front', 'rear']) {
    await goTo(page, `#/bike/spec/standard/${end}-brake`);
    await page.getByRole('button', { name: /^Kind/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: /drum/ }).click();
    await press(page, 'Save');
    await page.locator('main[data-page="bike/spec"]').waitFor();
  }
  await goTo(page, '#/bike/spec/standard/supply');
  await page.getByRole('button', { name: /^System/ }).click();
  await typeOnPad(page, '6');
  await press(page, 'Save');
  await page.locator('main[data-page="bike/spec"]').waitFor();

  await goTo(page, '#/plan/ready-made');
  await expect(page.getByText('5 jobs are left out because of what the bike is')).toBeVisible();
  await page.getByRole('button', { name: /^Stood for years/ }).click();
  await expect(page.getByRole('dialog')).toContainText('Both brakes are drums.');
  await page.getByRole('dialog').getByRole('button', { name: /^Add \d+ jobs$/ }).click();
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

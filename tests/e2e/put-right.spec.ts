// What is found becomes work in one tap, on a bike entered by hand: each side names the other.
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

test.beforeEach(async ({ page }) => {
  await page.goto('./#/start/own');
  await settled(page);
  await page.getByLabel('Name of the bike').fill('Barn find');
  await press(page, 'Next');
  await press(page, 'Skip this');
  await page.waitForFunction(() => !location.hash.startsWith('#/start'));
});

test('a failed item of the inspection becomes a job, and once that is done it asks to be looked at again', async ({ page }) => {
  await goTo(page, '#/inspect/gb/item/horn');
  await press(page, 'Not good');
  // The answer turns the page.
  await page.locator('main[data-page="inspect/gb/item/horn"]').waitFor({ state: 'detached' });
  await settled(page);
  await goTo(page, '#/inspect/gb/summary');
  await page.getByRole('button', { name: /^Make it a job: .*horn/i }).click();
  const link = page.getByRole('link', { name: /Horn and switches.*The job that puts it right.*not begun/ });
  await expect(link).toBeVisible();
  await link.click();
  await page.getByRole('link', { name: /Found in the inspection/ }).click();
  await page.locator('main[data-page="inspect/gb/item/horn"]').waitFor();
  await page.getByRole('link', { name: /Horn and switches/ }).click();
  await page.getByRole('button', { name: 'It is done', exact: true }).click();
  await page.getByRole('dialog').getByRole('button', { name: /^Done/ }).click();
  await goTo(page, '#/inspect/gb/item/horn');
  await expect(page.getByRole('status').filter({ hasText: 'look again' })).toContainText('Put right by “Horn and switches”');
});

test('a search for a fault ends in a job, and an end that names no cure is refused at its field', async ({ page }) => {
  await goTo(page, '#/numbers/faults');
  await page.getByRole('button', { name: /^Oil leak/ }).click();
  await page.locator('main[data-page^="numbers/faults/"]').waitFor();
  await settled(page);
  const make = page.getByRole('button', { name: /^Make it a job/ });
  const [question, choices] = [page.locator('.question .ask'), page.locator('button.choice')];
  while ((await choices.count()) > 0) {
    const asked = (await question.textContent()) ?? '';
    await choices.first().click();
    await expect(question.filter({ hasText: asked })).toHaveCount(0);
  }
  await make.first().click();
  const link = page.getByRole('link', { name: /The job that puts it right/ });
  await expect(link).toBeVisible();
  await press(page, 'End this search');
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('What put it right').fill('');
  await sheet.getByRole('button', { name: 'That cured it' }).click();
  await expect(sheet.getByRole('alert')).toContainText('What put it right');
  await sheet.getByLabel('What put it right').fill('A new washer');
  await sheet.getByLabel('What was learned').fill('Dry it first, then look.');
  await sheet.getByRole('button', { name: 'That cured it' }).click();
  await page.locator('main[data-page="numbers/faults"]').waitFor();
  await page.getByRole('link', { name: /Oil leak.*A new washer.*not begun/ }).click();
  await expect(page.getByText('Dry it first, then look.')).toBeVisible();
  await page.getByRole('link', { name: /The job that puts it right/ }).click();
  await expect(page.getByRole('link', { name: /Oil leak.*Found by a search for a fault/ })).toBeVisible();
});

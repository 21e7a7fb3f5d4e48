// Tyres: a sidewall is read or refused with the part that failed, a date code has its age, another tyre is tried and fitted.
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

test.beforeEach(async ({ page }) => {
  await openDemo(page);
});

test('another size is read, compared, tried in the ripple, fitted and taken back', async ({ page }) => {
  await goTo(page, '#/numbers/tyres');
  await page.getByLabel('Size on the sidewall').fill('3.50-18 56P');
  await page.getByLabel('Size on the sidewall').blur();
  await settled(page);
  // 18 in and two heights of 3.50 in: 25 in, 635 mm.
  await expect(page.locator('.answer').first()).toContainText('635');
  await expect(page.getByRole('img', { name: /^Two wheels on one floor/ })).toBeVisible();
  await expect(page.getByText('224 kg').first()).toBeVisible();
  await press(page, 'Try on the bike');
  const ripple = page.getByRole('dialog');
  await expect(ripple).toContainText(/outer diameter/i);
  await ripple.getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('Rear tyre: the tried one is fitted.')).toBeVisible();
  await press(page, 'Undo');
});

test('a sidewall that cannot be read is refused with the part that failed', async ({ page }) => {
  await goTo(page, '#/numbers/tyres');
  await page.getByLabel('Size on the sidewall').fill('three-18');
  await page.getByLabel('Size on the sidewall').blur();
  await expect(page.locator('.field', { hasText: 'Size on the sidewall' }).getByRole('alert')).toContainText(/cannot be read|expected|write/i);
});

test('three figures of a date code mean an old tyre, whatever the decade', async ({ page }) => {
  await goTo(page, '#/numbers/tyres?dateCode=324');
  await expect(page.getByText('week 32 of 1994').first()).toBeVisible();
  await expect(page.getByText('▲ not good').first()).toBeVisible();
  await goTo(page, '#/numbers/tyres?dateCode=6002');
  await expect(page.locator('.field', { hasText: 'DOT code' }).getByRole('alert')).toContainText(/53/);
});

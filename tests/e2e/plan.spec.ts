// The plan: how sure its date is, what is supposed, what to order first, and the hours that jobs ask for.
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

test.beforeEach(async ({ page }) => {
  await openDemo(page);
});

test('the date is told as likely and safe, and supposing changes it without storing anything', async ({ page }) => {
  await goTo(page, '#/plan');
  const ready = page.locator('dl').first();
  const before = await ready.innerText();
  await page.getByRole('radio', { name: 'How sure' }).check();
  await settled(page);
  await expect(page.getByText('If all goes as planned')).toBeVisible();
  await expect(page.getByText('Likely ready')).toBeVisible();
  await expect(page.getByRole('img', { name: /^Share of runs that are ready by a day/ })).toBeVisible();
  const tuesday = page.getByRole('checkbox', { name: /^Never on Tuesday/ });
  await expect(tuesday).toContainText(/later|no change/);
  await tuesday.click();
  await expect(tuesday).toHaveAttribute('aria-checked', 'true');
  await page.getByRole('checkbox', { name: /^The garage is 5 K colder/ }).click();
  await expect(page.getByText('Supposed together')).toBeVisible();
  // Another day of the week takes the place of the first; without Saturdays nothing that needs daylight is ever done.
  await page.getByRole('checkbox', { name: /^Never on Saturday/ }).click();
  await expect(tuesday).toHaveAttribute('aria-checked', 'false');
  await expect(page.getByText(/^No date yet\./)).toBeVisible();
  await page.getByRole('radio', { name: 'Calendar' }).check();
  await settled(page);
  expect(await ready.innerText()).toBe(before);
});

test('a wanted part gets its delivery and stands in the list of what to order first', async ({ page }) => {
  await goTo(page, '#/plan?view=sure');
  await page.getByRole('heading', { name: 'Order first' }).scrollIntoViewIfNeeded();
  await page.getByRole('link', { name: /^Steering-head bearings/ }).first().click();
  await settled(page);
  await page.getByRole('radio', { name: 'Within days' }).check();
  await page.getByRole('button', { name: /^At worst/ }).click();
  await typeOnPad(page, '1');
  await press(page, 'Save');
  await expect(page.getByRole('alert').filter({ hasText: 'must stand in this order' })).toBeVisible();
  await page.getByRole('button', { name: /^At worst/ }).click();
  await typeOnPad(page, '60');
  await press(page, 'Save');
  await page.locator('main[data-page="bike/parts"]').waitFor();
  await goTo(page, '#/plan?view=sure');
  const first = page.locator('section', { has: page.getByRole('heading', { name: 'Order first' }) }).getByRole('link').first();
  await expect(first).toContainText('Steering-head bearings');
});

test('a job for two goes where the helper comes, and says when nobody ever does', async ({ page }) => {
  await goTo(page, '#/plan/new');
  await page.getByLabel('What is done').fill('Hold the fork straight');
  await page.getByRole('radio', { name: 'With a helper' }).check();
  await expect(page.getByRole('button', { name: /^Not damper than/ })).toContainText('does not matter');
  await press(page, 'Save');
  // The form says the same words; only the page of the job tells that it was saved.
  await page.locator('main[data-page^="plan/job/"]').waitFor();
  await expect(page.getByText('With a helper')).toBeVisible();
  await goTo(page, '#/bike/hours');
  await press(page, 'Nobody ever comes');
  await press(page, 'Keep this week');
  await page.locator('main[data-page="bike"]').waitFor();
  await goTo(page, '#/plan');
  await expect(page.getByText(/can only be done while a helper is there/).first()).toBeVisible();
  await goTo(page, '#/bike/hours');
  await page.getByRole('radio', { name: 'Sat' }).check();
  await page.getByRole('button', { name: /^Saturday, from 19:00/ }).last().click();
  for (let hour = 19; hour > 9; hour -= 1) await press(page, 'Hour: one less');
  await press(page, 'Done');
  await press(page, 'Keep this week');
  await page.locator('main[data-page="bike"]').waitFor();
  await goTo(page, '#/plan?view=stages');
  await page.getByRole('link', { name: /^Hold the fork straight/ }).click();
  await settled(page);
  await expect(page.getByRole('main')).toContainText(/In the plan\s+.*\d\d:\d\d/);
});

test('a tool that is not at hand becomes a part, and a spot and the air of a job are kept', async ({ page }) => {
  await goTo(page, '#/plan?view=stages');
  await page.locator('a.row', { hasText: 'Paint' }).first().click();
  await expect(page.getByRole('heading', { name: 'Lay out before you begin' })).toBeVisible();
  await page.getByRole('button', { name: /^goggles is not at hand/ }).click();
  await expect(page.getByRole('link', { name: /goggles/ }).first()).toContainText('wanted');
  await expect(page.getByText(/^Waits for .*goggles/)).toBeVisible();
  await page.getByRole('link', { name: 'Edit' }).click();
  await page.getByRole('button', { name: /^Stand, spray place or oven/ }).click();
  await page.getByRole('checkbox', { name: /Oven or heat lamp/ }).click();
  await page.getByRole('button', { name: 'Done', exact: true }).click();
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.locator('main')).toContainText('Oven or heat lamp');
  await expect(page.locator('main')).toContainText('10\u00a0°C or more');
});

// What is typed and not yet saved: a reload, another page or a closed app loses none of it, and once saved nothing is left.
import type { Page } from '@playwright/test';
import { firstLink, goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

test.beforeEach(async ({ page }) => {
  await openDemo(page);
});

async function reload(page: Page) {
  await page.reload();
  await settled(page);
}
/** Names of the drafts that the device keeps. */
const drafts = (page: Page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('layshaft.draft.')));

test('the sheet of a coat, and that of its can, are open again after a reload with what was typed', async ({ page }) => {
  await goTo(page, '#/numbers/coats');
  await page.locator('ol button').nth(1).click();
  const sheet = page.getByRole('dialog').first();
  await sheet.getByLabel('What it is called').fill('Grey primer');
  await reload(page);
  await expect(sheet.getByLabel('What it is called')).toHaveValue('Grey primer');

  await sheet.getByRole('button', { name: 'Change the data of this can' }).click();
  const can = page.getByRole('dialog').last();
  await can.getByLabel('What it is called').fill('Primer from the shelf');
  await reload(page);
  await expect(can.getByLabel('What it is called')).toHaveValue('Primer from the shelf');
  await can.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('dialog')).toHaveCount(1);

  // Moved in the order, it takes along what was typed.
  await sheet.getByRole('button', { name: /one later$/ }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.locator('ol li').nth(2)).toContainText('Grey primer');
  await expect(page.locator('ol li').nth(2)).toContainText('Primer from the shelf');
  await reload(page);
  await expect(page.getByRole('dialog')).toHaveCount(0);

  // Closed with its cross, nothing of it is kept.
  await page.locator('ol button').first().click();
  await sheet.getByLabel('What it is called').fill('A slip');
  await sheet.getByRole('button', { name: 'Close' }).click();
  await reload(page);
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect(page.getByText('A slip')).toHaveCount(0);
});

test('a job and a part half written are there again, can be discarded, and leave nothing once saved', async ({ page }) => {
  await goTo(page, '#/plan/new');
  const title = page.getByLabel('What is done');
  await title.fill('Lace the front wheel');
  await press(page, 'Add a step');
  await page.getByLabel('Step 1', { exact: true }).fill('Sort the spokes by length.');
  await page.getByLabel('Tools to lay out').fill('spoke key');
  await reload(page);
  await expect(title).toHaveValue('Lace the front wheel');
  await expect(page.getByText('Sort the spokes by length.')).toBeVisible();
  await expect(page.getByLabel('Tools to lay out')).toHaveValue('spoke key');
  await press(page, 'Discard it');
  await expect(title).toHaveValue('');
  await expect(page.getByLabel('Tools to lay out')).toHaveValue('');

  // Another page does not lose it either.
  await title.fill('Lace the rear wheel');
  await goTo(page, '#/bike/parts/new');
  await page.getByLabel('What it is', { exact: true }).fill('Rim tape');
  await goTo(page, '#/plan/new');
  await expect(page.getByText('Not saved yet.')).toBeVisible();
  await expect(title).toHaveValue('Lace the rear wheel');
  await press(page, 'Save');
  await page.locator('main[data-page^="plan/job/"]').waitFor();
  await goTo(page, '#/plan/new');
  await expect(title).toHaveValue('');
  await goTo(page, '#/bike/parts/new');
  await expect(page.getByLabel('What it is', { exact: true })).toHaveValue('Rim tape');
  await press(page, 'Save');
  await page.locator('main[data-page="bike/parts"]').waitFor();
  expect(await drafts(page)).toEqual([]);
});

test('what was typed goes over what has become of the job meanwhile, and only that', async ({ page }) => {
  const job = await firstLink(page, '#/plan?view=stages', 'a.row[href^="#/plan/job/"]');
  await goTo(page, `${job}/edit`);
  await page.getByLabel('What is done').fill('Another name');
  await reload(page);
  await goTo(page, job ?? '');
  await press(page, 'It is done');
  await page.getByRole('dialog').getByRole('button', { name: 'Done', exact: true }).click();
  await expect(page.getByRole('dialog').getByText(/is done\./)).toBeVisible();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).last().click();
  await goTo(page, `${job}/edit`);
  await expect(page.getByLabel('What is done')).toHaveValue('Another name');
  await press(page, 'Save');
  await page.locator('main:not([data-page$="/edit"])').waitFor();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Another name');
  await expect(page.getByText('done', { exact: true }).first()).toBeVisible();
  expect(await drafts(page)).toEqual([]);
});

test('the first bike is not lost half way, and not entered twice', async ({ page }) => {
  await goTo(page, '#/start/own');
  await page.getByLabel('Name of the bike').fill('Grandfather');
  await reload(page);
  await expect(page.getByLabel('Name of the bike')).toHaveValue('Grandfather');
  await press(page, 'Next');
  await page.getByRole('heading', { name: 'What kind of bike is it?' }).waitFor();
  await reload(page);
  for (const step of ['What kind of bike is it?', 'What is to be done?', 'When do you work on it?', 'Where will it be inspected?']) {
    await page.getByRole('heading', { name: step }).waitFor();
    await press(page, 'Skip this');
  }
  await page.locator('main[data-page="today"]').waitFor();
  await goTo(page, '#/bike/shelf');
  await expect(page.getByText('Grandfather')).toHaveCount(1);
  expect(await drafts(page)).toEqual([]);
});

test('the data of a can on the cure page, and what its clock is started on, are there again', async ({ page }) => {
  await goTo(page, '#/numbers/cure');
  await press(page, 'Change the data');
  const sheet = page.getByRole('dialog').first();
  await sheet.getByLabel('What it is called').fill('Liner from the cellar');
  await sheet.getByRole('button', { name: /^Full cure after/ }).click();
  await typeOnPad(page, '120');
  await reload(page);
  await expect(sheet.getByRole('button', { name: /^Full cure after/ })).toContainText(/120\sh/);
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Liner from the cellar')).toBeVisible();
  await reload(page);
  await expect(page.getByText('Liner from the cellar')).toBeVisible();
  await press(page, 'Start the clock');
  await sheet.getByLabel('On what').fill('Spare tank');
  await sheet.getByRole('radio', { name: 'Earlier' }).check();
  await sheet.getByLabel('Day and time').fill('2126-03-18T21:00');
  await reload(page);
  await expect(sheet.getByLabel('On what')).toHaveValue('Spare tank');
  await expect(sheet.getByLabel('Day and time')).toHaveValue('2126-03-18T21:00');
  // A day ahead is refused at its field; yesterday evening is told as such.
  await sheet.getByRole('button', { name: 'Start the clock' }).click();
  await expect(sheet.getByRole('alert')).toContainText('lies ahead');
  await sheet.getByLabel('Day and time').fill('2024-03-18T21:00');
  await sheet.getByRole('button', { name: 'Start the clock' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Spare tank');
  // The data of the can stay for the next clock.
  expect(await drafts(page)).toEqual(['layshaft.draft.cure']);
});

test('a surface half measured is there again', async ({ page }) => {
  await goTo(page, '#/numbers/mixing?mix=cover');
  await press(page, 'Add a surface');
  const sheet = page.getByRole('dialog').first();
  await sheet.getByRole('button', { name: /^Length along it/ }).click();
  await typeOnPad(page, '333');
  await reload(page);
  await expect(sheet.getByRole('button', { name: /^Length along it/ })).toContainText('333');
  await sheet.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.getByRole('dialog')).toHaveCount(0);
  expect(await drafts(page)).toEqual([]);
});

// Lamps, flashers and charging: what the swap to LED indicators does, and what four readings of a meter say.
import type { Page } from '@playwright/test';
import { pickWire, tryLed } from './lib/pages.mjs';
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

test('a search asks one question at a time, keeps its answers over a reload, and takes the last one back', async ({ page }) => {
  await goTo(page, '#/numbers/faults');
  await page.locator('button.row').first().click();
  const choices = page.locator('button.choice');
  await expect(choices.first()).toBeVisible();
  await page.getByText('Suspects', { exact: true }).click();
  await expect(page.getByRole('img', { name: /How likely each suspect is/ })).toBeVisible();
  const first = await page.locator('.ask').innerText();
  await choices.last().click();
  await expect(page.getByRole('heading', { name: 'What was found' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'What was found' })).toBeVisible();
  await press(page, 'Take the last answer back');
  await expect(page.locator('.ask')).toHaveText(first);
  // Whatever is answered, it ends: with one cure, or with an order in which to try them.
  for (let step = 0; step < 40 && (await choices.count()) > 0; step += 1) {
    await choices.first().click();
    await expect(page.locator('dt', { hasText: new RegExp(`^(▲ )?${step + 1}\\. `) })).toBeVisible();
    await settled(page);
  }
  await press(page, 'End this search');
  await press(page, 'That cured it');
  await expect(page.getByRole('heading', { name: 'Ended' })).toBeVisible();
});

test('a circuit is drawn with its values, its switches turn, and a fault shows what it does', async ({ page }) => {
  await goTo(page, '#/numbers/circuits');
  await expect(page.getByRole('img', { name: /^Drawing of the circuit/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Parts and wires' })).toBeVisible();
  await page.getByRole('radio').nth(1).check();
  await settled(page);
  await page.getByRole('button', { name: /^Try a fault/ }).click();
  await page.getByRole('dialog').getByRole('button').nth(2).click();
  await settled(page);
  await expect(page.getByRole('heading', { name: 'What it shows' })).toBeVisible();
});

test('a wire of the circuit is changed to the bike’s own, and a colour that no code knows is refused', async ({ page }) => {
  await goTo(page, '#/numbers/circuits');
  await pickWire(page);
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('Colour code').fill('ZZ');
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(sheet.getByRole('alert')).toContainText(/colour/i);
  await sheet.getByLabel('Colour code').fill('RD/WH');
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('The circuit is changed.')).toBeVisible();
});

test('a part that is marked as not there is listed, and put back as it was', async ({ page }) => {
  await goTo(page, '#/numbers/circuits');
  const gone = page.getByRole('heading', { name: 'Not there on this bike' });
  await expect(gone).toHaveCount(0);
  await pickWire(page);
  const sheet = page.getByRole('dialog');
  const name = await sheet.getByRole('heading').first().innerText();
  await sheet.getByRole('button', { name: 'Not there on this bike' }).click();
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(gone).toBeVisible();
  const row = page.locator('button.row').filter({ has: page.getByText(name, { exact: true }) });
  await expect(row).toHaveCount(0);
  await page.getByRole('button', { name: `Put back: ${name}` }).click();
  await expect(gone).toHaveCount(0);
  await expect(row).toBeVisible();
});

// What is found becomes work in one tap, on a bike entered by hand: each side names the other.
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

test.beforeEach(async ({ page }) => {
  await page.goto('./#/start/own');
  await settled(page);
  await page.getByLabel('Name of the bike').fill('Barn find');
  await press(page, 'Next');
  await page.getByRole('heading', { level: 1, name: 'What kind of bike is it?' }).waitFor();
});

test('a failed item of the inspection becomes a job, and once that is done it asks to be looked at again', async ({ page }) => {
  await goTo(page, '#/inspect/gb/item/horn');
  await press(page, 'Not good');
  // The answer turns the page.
  await page.locator('main[data-page="inspect/gb/item/horn"]').waitFor({ state: 'detached' });
  await settled(page);
  await goTo(page, '#/inspect/gb/summary');
  await page.getByRole('button', { name: /^Make it a job: .*horn/i }).click();
  const link = page.getByRole('link', {
    name: /Horn and switches.*The job that puts it right.*not begun/,
  });
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
  // Who is not sure is asked something else, and the list of suspects stays folded.
  const first = (await question.textContent()) ?? '';
  await press(page, 'Not sure: ask something else');
  await expect(question.filter({ hasText: first })).toHaveCount(0);
  await expect(page.getByText('not sure', { exact: true })).toBeVisible();
  await expect(page.getByText(/is judgement, no measured figure/)).toBeHidden();
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

test('a ready-made job puts its parts on the list, and a parcel that comes is one tap on Today', async ({ page }) => {
  await goTo(page, '#/bike/spec/standard/drive');
  await page.getByRole('button', { name: 'Gearbox sprocket not known' }).click();
  await typeOnPad(page, '15');
  await press(page, 'Save');
  await page.locator('main[data-page="bike/spec"]').waitFor();
  await goTo(page, '#/inspect/gb/item/chain.wear');
  await press(page, 'Not good');
  await page.locator('main[data-page="inspect/gb/item/chain.wear"]').waitFor({ state: 'detached' });
  await settled(page);
  await goTo(page, '#/inspect/gb/item/chain.wear');
  await page.getByRole('button', { name: /^Make it a job/ }).click();
  await expect(page.locator('.toast')).toContainText('Gearbox sprocket (15T)');
  await page.getByRole('link', { name: /Chain and sprockets/ }).click();
  await page.getByRole('link', { name: /^Gearbox sprocket.*15T/ }).click();
  await page.getByRole('radio', { name: 'ordered', exact: true }).check();
  await press(page, 'Save');
  await page.locator('main[data-page="bike/parts"]').waitFor();
  await goTo(page, '#/today');
  await page.getByRole('button', { name: 'It has come: Gearbox sprocket' }).click();
  await expect(page.getByRole('button', { name: 'It has come: Gearbox sprocket' })).toHaveCount(0);
  await page.locator('.toast').getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', { name: 'It has come: Gearbox sprocket' })).toBeVisible();
});

test('a reading beyond its limit becomes a job, a part and a photo, and once the job is done the reading is asked for again', async ({ page }) => {
  const reading = '#/numbers/chain?chainSize=c428&slackMm=45&chainSlackFromMm=15&chainSlackToMm=25';
  await goTo(page, reading);
  await page.getByRole('button', { name: 'Make it a job: Slack of the chain' }).click();
  await page.getByRole('link', { name: /line the wheel up.*The job that puts it right.*not begun/ }).click();
  await page.getByRole('link', { name: /Slack of the chain.*Found on the page on it/ }).click();
  await page.locator('main[data-page="numbers/chain"]').waitFor();
  await goTo(page, reading);
  await page.getByRole('button', { name: 'Put its part on the list: Slack of the chain' }).click();
  await page.getByRole('link', { name: /Part for: Slack of the chain.*wanted/ }).click();
  await expect(page.getByRole('link', { name: /Slack of the chain.*Found on the page on it/ })).toBeVisible();
  await goTo(page, reading);
  await page.getByRole('button', { name: 'Keep a photo: Slack of the chain' }).click();
  await expect(page.getByRole('dialog').getByRole('button', { name: 'Photo', exact: true })).toBeVisible();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await page.getByRole('link', { name: /The job that puts it right/ }).click();
  await page.getByRole('button', { name: 'It is done', exact: true }).click();
  await page.getByRole('dialog').getByRole('button', { name: /^Done/ }).click();
  await goTo(page, reading);
  await expect(page.getByText(/is done\. Take the reading again/)).toBeVisible();
});

test('a change that was tried becomes a job with its parts', async ({ page }) => {
  await goTo(page, '#/numbers/tyres?end=rear&tyre=3.25-18');
  await page.getByRole('button', { name: 'Try on the bike' }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('button', { name: 'Make it a job: Another rear tyre' }).click();
  await expect(sheet.getByRole('link', { name: /Rear tyre.*3\.25-18.*wanted/ })).toBeVisible();
  await sheet.getByRole('link', { name: /Fit the rear tyre and tube.*not begun/ }).click();
  await page.getByRole('link', { name: /Another rear tyre.*A change that was tried/ }).click();
  await page.locator('main[data-page="numbers/tyres"]').waitFor();
});

// A job becomes done in one sheet, wherever it is said; and reading ahead at the bench marks nothing.
import type { Page } from '@playwright/test';
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

/** A bike entered by hand with nothing but a tank to be lined; gives the job's id. */
async function bikeWithTank(page: Page): Promise<string> {
  await page.goto('./');
  await page.getByRole('button', { name: /demo bike/ }).waitFor();
  const id = await page.evaluate(async () => {
    const { layshaft } = window as unknown as {
      layshaft: { act: (command: object) => Promise<{ made: string }> };
    };
    await layshaft.act({ kind: 'startBike', identity: { name: 'Own' } });
    const { made } = await layshaft.act({ kind: 'addReadyMade', readyMade: 'tank-reline' });
    // The job waits for its liner kit, which is here.
    await layshaft.act({ kind: 'recordPart', id: `${made}-liner`, part: { title: 'Liner kit for the tank', state: 'here' } });
    return made;
  });
  await page.goto('./#/today');
  await page.reload();
  await settled(page);
  return id;
}

const sheet = (page: Page) => page.getByRole('dialog');
const say = (page: Page) => page.getByRole('button', { name: /^It is done/ }).click();

/** Presses *Done* in the sheet; the clock that it offered runs, and so Today and the job know. */
async function done(page: Page, id: string) {
  await sheet(page).getByRole('button', { name: 'Done', exact: true }).click();
  await expect(sheet(page)).toContainText('“Reline the tank” is done.');
  await expect(sheet(page).getByRole('link', { name: /Reline the tank/ })).toBeVisible();
  await goTo(page, '#/today');
  await expect(page.getByRole('region', { name: 'Curing' })).toContainText('Reline the tank');
  await goTo(page, `#/plan/job/${id}`);
  await expect(page.locator(`a[href^="#/numbers/cure/"]`)).toBeVisible();
}

test('from the job page, with a reload in the middle; opened again, its clock goes on and says so', async ({ page }) => {
  const id = await bikeWithTank(page);
  await goTo(page, `#/plan/job/${id}`);
  await say(page);
  await sheet(page).getByLabel('Note').fill('Two turns were enough.');
  await press(sheet(page), 'It took as long as estimated');
  await page.reload();
  await settled(page);
  await expect(sheet(page).getByLabel('Note')).toHaveValue('Two turns were enough.');
  await done(page, id);
  await expect(page.getByText('Two turns were enough.')).toBeVisible();
  await expect(page.getByText('Time it took')).toBeVisible();
  await press(page, 'Open it again');
  await expect(page.getByText(/The clock of “Reline the tank” goes on/)).toBeVisible();
  await expect(page.getByText('Two turns were enough.')).toHaveCount(0);
});

test('from Today', async ({ page }) => {
  const id = await bikeWithTank(page);
  await page.getByRole('radio', { name: 'Evening' }).check();
  await say(page);
  await done(page, id);
});

test('without its clock where that is not wanted, and the clock can be started afterwards', async ({ page }) => {
  await bikeWithTank(page);
  await page.getByRole('radio', { name: 'Evening' }).check();
  await say(page);
  await sheet(page).getByRole('radio', { name: 'Not now' }).check();
  await sheet(page).getByRole('button', { name: 'Done', exact: true }).click();
  await press(sheet(page), 'Start its cure clock');
  await sheet(page).last().getByRole('button', { name: 'Start the clock' }).click();
  await expect(sheet(page).getByRole('link', { name: /Reline the tank/ })).toBeVisible();
});

test('at the bench pages are turned without a mark, a later step marks those before it, and the sheet starts the cure', async ({ page }) => {
  const id = await bikeWithTank(page);
  await goTo(page, `#/bench/${id}`);
  const at = page.locator('dd');
  const mark = page.getByRole('button', { name: 'Done', exact: true });
  await press(page, 'Next');
  await press(page, 'Next');
  await expect(at).toHaveText(/^3 of 7/);
  await page.reload();
  await settled(page);
  await expect(at).toHaveText(/^1 of 7/);

  await mark.click();
  await expect(at).toHaveText(/^2 of 7/);
  await press(page, 'Next');
  await press(page, 'Next');
  await mark.click();
  await expect(page.getByText('Steps 2 to 4 are done.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Taken back.')).toBeVisible();
  await page.reload();
  await settled(page);
  await expect(at).toHaveText(/^2 of 7/);

  await page.locator('.halves').getByRole('button', { name: 'Back' }).click();
  await press(page, 'Not done after all');
  await expect(page.getByText('Step 1 is open again.')).toBeVisible();
  for (const box of await page.locator('.halves button').all()) expect((await box.boundingBox())?.height).toBeGreaterThanOrEqual(56);
  for (let step = 1; step <= 7; step += 1) await press(page, 'Next');
  await expect(page.getByText('7 steps are not marked as done.')).toBeVisible();
  await press(page, 'Finish');
  await done(page, id);
});

test('the step that starts the cure has the button for it, and the sheet offers no second clock', async ({ page }) => {
  const id = await bikeWithTank(page);
  await goTo(page, `#/bench/${id}`);
  for (let step = 1; step < 7; step += 1) await press(page, 'Next');
  await press(page, 'Start its cure clock');
  await sheet(page).getByRole('button', { name: 'Start the clock' }).click();
  await expect(page.getByRole('button', { name: 'Start its cure clock' })).toHaveCount(0);
  await press(page, 'Next');
  await press(page, 'Finish');
  await expect(sheet(page).getByRole('button', { name: 'Done', exact: true })).toBeEnabled();
  await expect(sheet(page).getByRole('radio', { name: 'Start its clock' })).toHaveCount(0);
});

// Three weeks with a bike entered by hand, 6 V and drums at both ends, in a cold garage: what is entered once is known everywhere,
// and what is done on one page is done on all of them.
import type { Page } from '@playwright/test';
import { stopClockAt } from './lib/clock.mjs';
import { barnFind } from './lib/start.ts';
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, test } from './lib/watch.ts';

/** A day of January 2026 and an hour, as the clock on the wall of the garage. */
const at = (day: number, hour: number) => new Date(Date.UTC(2026, 0, day, hour - 1));

async function moveClock(page: Page, day: number, hour: number) {
  await stopClockAt(page, at(day, hour));
  await page.reload();
  await settled(page);
}

/** The job in the plan, opened. */
async function openJob(page: Page, title: RegExp) {
  await goTo(page, '#/plan?view=stages');
  await page.getByRole('link', { name: title }).first().click();
  await page.locator('main[data-page^="plan/job/"]').waitFor();
  await settled(page);
}

async function finish(page: Page, minutes?: string) {
  await page.getByRole('button', { name: 'It is done', exact: true }).click();
  const sheet = page.getByRole('dialog');
  if (minutes) {
    await sheet.getByRole('button', { name: /^Time it took/ }).click();
    await typeOnPad(page, minutes);
  }
  await sheet.getByRole('button', { name: /^Done/ }).click();
  await sheet.getByRole('button', { name: 'Close' }).first().click();
  await settled(page);
}

async function usual(page: Page, label: RegExp, value: string) {
  await page.getByRole('button', { name: label }).click();
  await typeOnPad(page, value);
}

test('three weeks with a 6 V bike with two drums: lamps, paint, parcels, a fault and the inspection are one thread', async ({ page }) => {
  test.slow();
  await stopClockAt(page, at(10, 10));
  await barnFind(page, 'Four-stroke single, 6 V, two drum brakes');
  await page.getByRole('checkbox', { name: /^New tyres and chain/ }).click();
  await press(page, 'Next');
  await page.getByRole('heading', { level: 1, name: 'When do you work on it?' }).waitFor();
  await page.getByRole('radio', { name: 'Saturdays', exact: true }).click();
  await press(page, 'Next');
  await page.getByRole('heading', { level: 1, name: 'Where will it be inspected?' }).waitFor();
  await page.getByRole('radio', { name: 'Great Britain' }).click();
  await press(page, 'Next');
  await page.getByRole('heading', { level: 1, name: 'Today' }).waitFor();

  // The kind of bike entered its lamps and brakes: lamps, load, circuits and inspection know them.
  await goTo(page, '#/numbers/lamps');
  await expect(page.getByRole('button', { name: /^Place/ })).toBeVisible();
  await goTo(page, '#/numbers/load');
  await expect(page.getByRole('button', { name: /^Headlamp/ })).toBeVisible();
  await goTo(page, '#/inspect/gb/item/brake.fluid');
  await expect(page.getByText(/Not on this bike: both brakes are drums/)).toBeVisible();

  // A cold garage: a coat that goes on there is asked about first, and nothing is noted.
  await goTo(page, '#/bike/garage');
  await usual(page, /^By day/, '8');
  await usual(page, /^By night/, '4');
  await press(page, 'Keep the usual values');
  await expect(page.locator('.toast')).toBeVisible();
  await goTo(page, '#/plan/ready-made');
  await page.getByRole('button', { name: /^Rust spots on the frame/ }).click();
  await press(page, 'Put it into the plan');
  await page.locator('main[data-page^="plan/job/"]').waitFor();
  await settled(page);
  const job = await page.evaluate(() => location.hash);
  await page.getByRole('link', { name: /Rust spot on the frame.*nothing is on yet/ }).click();
  await page.getByRole('button', { name: '“Converter” goes on now' }).click();
  await expect(page.getByRole('dialog')).toContainText('Too cold.');
  await page.getByRole('dialog').getByRole('button', { name: 'Wait with it' }).click();
  await expect(page.locator('p.state')).toHaveText('nothing is on yet');
  // A heater helps: the job has its hours in the plan.
  await goTo(page, '#/bike/garage');
  await usual(page, /^By day/, '18');
  await usual(page, /^By night/, '18');
  await press(page, 'Keep the usual values');
  await goTo(page, job);
  await expect(page.getByText('In the plan').locator('..')).toContainText(/Jan|Feb/);

  // The coats go on from the bench, each as a step says so; Today knows them at once.
  await press(page, 'Start at the bench');
  await page.locator('main[data-page^="bench/"], .bench').first().waitFor();
  const lay = (name: string) => page.getByRole('button', { name: `“${name}” goes on now` });
  for (let turned = 0; turned < 12 && !(await lay('Converter').isVisible()); turned += 1) {
    await page.keyboard.press('ArrowRight');
    await settled(page);
  }
  await lay('Converter').click();
  await expect(page.locator('.toast')).toContainText('“Converter” is on.');
  await expect(lay('Converter')).toHaveCount(0);
  await goTo(page, '#/today');
  await expect(page.getByRole('link', { name: /Rust spot on the frame/ })).toContainText('1 of 3 coats');
  // Five hours on, the next may go on; two more days on, its window is missed and Today says so.
  await moveClock(page, 10, 15);
  await page.getByRole('link', { name: /Rust spot on the frame/ }).click();
  await page.getByRole('button', { name: '“First rust paint” goes on now' }).click();
  await expect(page.locator('p.state')).not.toHaveText('nothing is on yet');
  await moveClock(page, 13, 10);
  await goTo(page, '#/today');
  const card = page.getByRole('link', { name: /Rust spot on the frame/ });
  await expect(card).toContainText('▲');
  await card.click();
  await press(page, 'Sanded and wiped');
  await page.getByRole('button', { name: '“Second rust paint” goes on now' }).click();
  await expect(page.locator('p.state')).toHaveText('all coats are on');
  // Finishing offers no second clock: the coats have theirs, and what follows waits for the last of them.
  await goTo(page, job);
  await page.getByRole('button', { name: 'It is done', exact: true }).click();
  await expect(page.getByRole('dialog')).toContainText('3 of 3 coats');
  await expect(page.getByRole('dialog').getByText('Start its clock')).toHaveCount(0);
  await page.getByRole('dialog').getByRole('button', { name: /^Done/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).first().click();
  await expect(page.getByText(/done/).first()).toBeVisible();

  // A job that needs a part waits for its parcel; the parcel comes, and it is one tap on Today.
  await goTo(page, '#/bike/parts');
  const chain = page.getByRole('link', { name: /^Chain/ }).first();
  await chain.click();
  await page.getByRole('radio', { name: 'ordered', exact: true }).check();
  await press(page, 'Save');
  await page.locator('main[data-page="bike/parts"]').waitFor();
  await openJob(page, /^Chain and sprockets/);
  const chainJob = await page.evaluate(() => location.hash);
  await expect(page.getByRole('link', { name: /^Chain.*ordered/ })).toBeVisible();
  await moveClock(page, 24, 10);
  await goTo(page, '#/today');
  await page.getByRole('button', { name: 'It has come: Chain' }).click();
  await goTo(page, chainJob);
  await expect(page.getByRole('link', { name: /^Chain.*here/ })).toBeVisible();

  // Put away, the job keeps the order of those round it, and comes back from the list.
  await press(page, 'Put it away');
  await page.locator('main[data-page="plan"]').waitFor();
  await goTo(page, '#/bike/away');
  await page.getByRole('button', { name: 'Bring back: Chain and sprockets' }).click();
  await goTo(page, chainJob);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Chain and sprockets');

  // A fault is searched for, becomes a job, and the job leads back to the search.
  await goTo(page, '#/numbers/faults');
  await page.getByRole('button', { name: /^Oil leak|^Oil on the floor/ }).click();
  await page.locator('main[data-page^="numbers/faults/"]').waitFor();
  await settled(page);
  const [question, choices] = [page.locator('.question .ask'), page.locator('button.choice')];
  while ((await choices.count()) > 0) {
    const asked = (await question.textContent()) ?? '';
    await choices.first().click();
    await expect(question.filter({ hasText: asked })).toHaveCount(0);
  }
  await page
    .getByRole('button', { name: /^Make it a job/ })
    .first()
    .click();
  await page.getByRole('link', { name: /The job that puts it right/ }).click();
  await expect(page.getByRole('link', { name: /Found by a search for a fault/ })).toBeVisible();
  await finish(page, '45');
  await page.getByRole('link', { name: /Found by a search for a fault/ }).click();
  await expect(page.getByRole('link', { name: /The job that puts it right.*done/ })).toBeVisible();

  // The inspection a week later: what fails is a job, done it is looked at again, and only the answer lets it pass.
  await moveClock(page, 31, 10);
  await goTo(page, '#/inspect/gb/item/horn');
  await press(page, 'Not good');
  await page.locator('main[data-page="inspect/gb/item/horn"]').waitFor({ state: 'detached' });
  await goTo(page, '#/inspect/gb/item/horn');
  await page.getByRole('button', { name: /^Make it a job/ }).click();
  await page.getByRole('link', { name: /The job that puts it right/ }).click();
  await finish(page);
  await goTo(page, '#/inspect/gb/item/horn');
  await expect(page.getByRole('status').filter({ hasText: 'look again' })).toBeVisible();
  await press(page, 'Good');
  await page.locator('main[data-page="inspect/gb/item/horn"]').waitFor({ state: 'detached' });
  await goTo(page, '#/inspect/gb/item/horn');
  await expect(page.getByText('look again')).toHaveCount(0);

  // Three weeks on, the date still stands on everything that was said.
  await goTo(page, '#/today');
  await expect(page.locator('.held')).toBeVisible();
});

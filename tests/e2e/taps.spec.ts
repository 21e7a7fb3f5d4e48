// How many taps the fields take that are entered most, counted as a hand does them: every finger that is lifted, and one
// for each text that is written on the keyboard of the device.
import type { Page } from '@playwright/test';
import { goTo, press } from './lib/steps.mjs';
import { barnFind } from './lib/start.ts';
import { expect, test } from './lib/watch.ts';

/** At most so many taps, from the open form to the saved record. */
const MOST = { drive: 26, lamp: 5, week: 4, part: 15, job: 10 };

class Taps {
  #texts = 0;
  constructor(readonly page: Page) {}

  async begin() {
    this.#texts = 0;
    await this.page.evaluate(() => {
      const counted = window as unknown as { taps?: number };
      if (counted.taps === undefined) addEventListener('pointerup', () => (counted.taps = (counted.taps ?? 0) + 1), true);
      counted.taps = 0;
    });
  }
  async write(label: string, text: string) {
    this.#texts += 1;
    await this.page.getByLabel(label, { exact: true }).fill(text);
  }
  /** Types on the pad that is open: what was there goes with the first key. */
  async type(text: string, then: 'Next' | 'Enter') {
    const pad = this.page.getByRole('dialog');
    for (const key of text) await pad.getByRole('button', { name: key === '.' ? 'decimal point' : key, exact: true }).click();
    await pad.getByRole('button', { name: then === 'Next' ? /^Enter, and on to/ : 'Enter', exact: then === 'Enter' }).click();
  }
  async end(what: keyof typeof MOST) {
    const taps = this.#texts + (await this.page.evaluate(() => (window as unknown as { taps: number }).taps));
    console.log(`taps for ${what}: ${String(taps)} (at most ${String(MOST[what])})`);
    expect(taps).toBeGreaterThan(0);
    expect(taps).toBeLessThanOrEqual(MOST[what]);
  }
}

test('what is entered most takes few taps', async ({ page }) => {
  await barnFind(page, 'Two-stroke, 6 V with battery, two drum brakes');
  const taps = new Taps(page);

  // Teeth, primary ratio and five gears: eight values, each of two keys or so.
  await goTo(page, '#/bike/spec/standard/drive');
  await taps.begin();
  await page
    .getByRole('button', { name: /^Gearbox sprocket/ })
    .first()
    .click();
  const drive = ['3.5', '2.8', '1.8', '1.3', '1', '.9'];
  for (const teeth of ['14 teeth', '39 teeth']) await page.getByRole('dialog').getByRole('button', { name: teeth }).click();
  for (const [at, value] of drive.entries()) await taps.type(value, at === drive.length - 1 ? 'Enter' : 'Next');
  await press(page, 'Save');
  await page.locator('main[data-page="bike/spec"]').waitFor();
  await taps.end('drive');
  await expect(
    page
      .getByText(/3 · 2 · 1/)
      .or(page.getByText(/3.*2.*1.*1.*1/))
      .first(),
  ).toBeVisible();

  await goTo(page, '#/bike/slot/standard/consumer');
  await taps.begin();
  await page.getByRole('button', { name: /^What it is/ }).click();
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Position lamp/ })
    .click();
  await press(page, 'Save');
  await page.locator('main[data-page="bike/spec"]').waitFor();
  await taps.end('lamp');

  await goTo(page, '#/start/own?step=hours&alone');
  await taps.begin();
  await page.getByRole('radio', { name: 'Two evenings and Saturday' }).click();
  await press(page, 'Next');
  await page.locator('main[data-page="today"]').waitFor();
  await taps.end('week');

  await goTo(page, '#/bike/parts/new');
  await taps.begin();
  await taps.write('What it is', 'Chain');
  await page.getByRole('radio', { name: 'ordered', exact: true }).click();
  await page.getByRole('button', { name: /^Price/ }).click();
  await taps.type('35', 'Enter');
  await page.getByRole('radio', { name: 'Within days' }).click();
  await press(page, 'Save');
  await page.locator('main[data-page="bike/parts"]').waitFor();
  await taps.end('part');

  await goTo(page, '#/plan/new');
  await taps.begin();
  await taps.write('What is done', 'Refit the mudguard');
  await page.getByRole('button', { name: /^Hands-on time/ }).click();
  await taps.type('90', 'Enter');
  await press(page, 'Save');
  await page.locator('main[data-page^="plan/job/"]').waitFor();
  await taps.end('job');
});

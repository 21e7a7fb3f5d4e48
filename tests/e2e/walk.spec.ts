// Addresses, Back, undo, keyboard: what a person expects without thinking of it.
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

test('a deep link opens its page, Back returns, and the way up does not pile up history', async ({ page }) => {
  await openDemo(page);
  await page.goto('./#/numbers');
  await settled(page);
  await page.getByRole('link', { name: /Gearing/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Gearing');
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await page.getByRole('button', { name: 'Back' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Numbers');
  await page.goBack();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Today');

  await page.goto('./#/numbers/gearing?front=17&rear=40');
  await settled(page);
  await expect(page.getByRole('button', { name: /^Gearbox sprocket: 17/ })).toBeVisible();
  await page.getByRole('button', { name: 'Back' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Numbers');
  await page.goto('./#/no/such/page');
  await expect(page.getByText('There is nothing at this address.')).toBeVisible();
  await press(page, 'Go to Today');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Today');
});

test('an edit is taken back from the toast that confirms it', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/numbers/gearing?front=16&rear=38');
  await press(page, 'Try on the bike');
  await page.getByRole('dialog').getByRole('button', { name: 'Fit it' }).click();
  await press(page, 'Undo');
  await expect(page.getByText('Taken back.')).toBeVisible();
  await goTo(page, '#/numbers/gearing');
  await expect(page.getByRole('button', { name: /^Gearbox sprocket: 15/ })).toBeVisible();
});

test('a job is added, ordered, changed, put away and brought back', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/plan/new');
  await page.getByLabel('What is done').fill('Refit the mudguard');
  await page.getByRole('button', { name: /Hands-on time/ }).click();
  await typeOnPad(page, '25');
  await press(page, 'Add a step');
  await page.getByLabel('Step 1', { exact: true }).fill('Four bolts, washers under each.');
  await page.getByRole('button', { name: /What comes first/ }).click();
  await page.getByRole('dialog').getByRole('checkbox').first().click();
  await page.getByRole('dialog').getByRole('button', { name: 'Done' }).click();
  await press(page, 'Save');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Refit the mudguard');
  await expect(page.getByText('Four bolts, washers under each.')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Comes first' })).toBeVisible();

  await press(page, 'Put it away');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Plan');
  await press(page, 'Undo');
  await page.goto('./#/plan?view=stages');
  await expect(page.getByRole('link', { name: /Refit the mudguard/ })).toBeVisible();
});

test('a job put away says what its followers follow now, stands in a list, and comes back from there', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/plan/job/tank-reline');
  await press(page, 'Put it away');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Plan');
  await expect(page.locator('.toast')).toContainText(/now follows|no longer waits/);
  await goTo(page, '#/bike/away');
  await expect(page.getByRole('heading', { level: 2 })).toHaveText(['Reline the tank']);
  await expect(page.getByText(/^Job, put away /)).toBeVisible();
  await press(page, 'Bring back: Reline the tank');
  await expect(page.getByText('Nothing is put away on this bike.')).toBeVisible();
  await goTo(page, '#/plan/job/tank-reline');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Reline the tank');
});

test('the history names the record, its fields and what stands inside them as a reader knows them', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/bike/history/job/tank-reline');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Job: history');
  await expect(page.getByRole('heading', { name: 'Hands-on time, min' })).toBeVisible();
  await expect(page.getByText('What passes: tank liner cures')).toBeVisible();
  await goTo(page, `#/bike/history/drive/${encodeURIComponent('standard/drive')}`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Drive train: history');
  await expect(page.getByRole('heading', { name: 'Drag area with rider' })).toBeVisible();
});

test('a number is typed in the other unit, and the choice sticks', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/numbers/gearing');
  await page.getByRole('button', { name: /^Compared at/ }).click();
  const pad = page.getByRole('dialog');
  await pad.getByRole('button', { name: 'Type in mph' }).click();
  await pad.getByRole('textbox').fill('50');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Compared at/ })).toContainText('50 mph');
  await page.reload();
  await settled(page);
  await expect(page.getByRole('button', { name: /^Compared at/ })).toContainText('mph');
});

test('the theme follows the switch and stays', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/bike/device');
  const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  const day = await paper();
  await page.getByRole('radio', { name: 'Night garage' }).check();
  const night = await paper();
  expect(night).not.toBe(day);
  await page.reload();
  await settled(page);
  expect(await paper()).toBe(night);
});

test('a language is chosen, the app opens again in it, and what was begun is still there', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/plan/new');
  await page.getByLabel('What is done').fill('Refit the mudguard');
  await goTo(page, '#/bike/device');
  await expect(page.getByRole('group', { name: 'Language' }).getByRole('radio', { name: 'As the device' })).toBeChecked();
  const opened = page.waitForEvent('load');
  await page.getByRole('radio', { name: 'English' }).check();
  await opened;
  await settled(page);
  await expect(page.getByRole('radio', { name: 'English' })).toBeChecked();
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
  await goTo(page, '#/plan/new');
  await expect(page.getByLabel('What is done')).toHaveValue('Refit the mudguard');
});

test('a first bike by hand: guided, skipped, and each page says what it still wants', async ({ page }) => {
  await page.goto('./');
  await press(page, 'Start my bike');
  await press(page, 'Next');
  await expect(page.getByRole('alert')).toContainText('Name of the bike: write 1 to 120 characters');
  await page.getByLabel('Name of the bike').fill('The red one');
  await page.getByRole('button', { name: /^Year of first use/ }).click();
  await typeOnPad(page, '1979');
  await press(page, 'Next');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What kind of bike is it?');
  await goTo(page, '#/today');
  await expect(page.getByRole('link', { name: /^What kind of bike is it/ })).toBeVisible();
  await expect(page.getByText(/No job is written down yet/)).toBeVisible();
  await goTo(page, '#/plan/new');
  await page.getByLabel('What is done').fill('Look it over');
  await press(page, 'Save');
  await page.locator('main[data-page^="plan/job/"]').waitFor();
  await goTo(page, '#/plan');
  await press(page, 'Set bench time');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bench time');
  await goTo(page, '#/numbers/gearing');
  await expect(page.getByText('Something is not known yet:')).toBeVisible();
  await press(page, 'Enter it on the bike');
  await page.locator('main[data-page^="bike/spec"]').waitFor();
  await goTo(page, '#/inspect');
  await expect(page.getByText('1979')).toBeVisible();
});

test('a photo is kept with its job, shown again after a reload, put away and brought back', async ({ page }) => {
  await openDemo(page);
  await page.goto('./#/plan?view=stages');
  await settled(page);
  await page.locator('a.row[href^="#/plan/job/"]').first().click();
  await settled(page);
  const picture = await page.screenshot({
    clip: { x: 0, y: 0, width: 120, height: 120 },
  });
  const choose = page.getByLabel('Take or choose a photo');
  await choose.setInputFiles({
    name: 'note.png',
    mimeType: 'image/png',
    buffer: Buffer.from('no picture at all'),
  });
  await expect(page.getByRole('alert')).toContainText('“note.png” is no picture that can be read here.');
  await choose.setInputFiles({
    name: 'plug.png',
    mimeType: 'image/png',
    buffer: picture,
  });
  await page.getByLabel('What it shows').fill('Plug, seen from the left');
  await press(page, 'Keep it');
  const kept = page.getByRole('button', {
    name: 'Photo: Plug, seen from the left',
  });
  await expect(kept.locator('img')).toBeVisible();
  await page.reload();
  await settled(page);
  await kept.click();
  await expect(page.getByRole('dialog').getByRole('img', { name: 'Plug, seen from the left' })).toBeVisible();
  await press(page, 'Put it away');
  await expect(kept).toHaveCount(0);
  await press(page, 'Undo');
  await expect(kept).toBeVisible();
});

test('flashes are counted by tapping along, and the count is the reading', async ({ page }) => {
  await openDemo(page);
  await page.goto('./#/inspect');
  await settled(page);
  let item = await page.locator('a[href*="/item/"]').first().getAttribute('href');
  const tapAlong = page.getByRole('button', { name: 'Tap along' });
  while (item?.includes('/item/')) {
    await goTo(page, item);
    await page.locator('main h2').first().waitFor();
    if (await tapAlong.count()) break;
    item = await page.getByRole('link', { name: /^(Next|Summary)$/ }).getAttribute('href');
  }
  await tapAlong.click();
  const pad = page.getByRole('button', { name: 'Flash', exact: true });
  await expect(page.getByRole('button', { name: 'Take it' })).toBeDisabled();
  // Eight flashes, 0.75 s apart by the page's own clock: 80 a minute.
  for (let at = 0; at < 8; at += 1) {
    await page.evaluate((ms) => (performance.now = () => ms), at * 750);
    await pad.dispatchEvent('pointerdown');
  }
  await expect(page.getByText('80 /min')).toBeVisible();
  await press(page, 'Take it');
  await expect(page.getByRole('status').filter({ hasText: 'Meets it' })).toBeVisible();
});

test('the day sheet prints on white, without the bar and without buttons', async ({ page }) => {
  await openDemo(page);
  await goTo(page, '#/bike/device');
  await page.getByRole('radio', { name: 'Night garage' }).check();
  await page.goto('./#/inspect');
  await settled(page);
  await page.getByRole('link', { name: 'Day sheet to print' }).click();
  await settled(page);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('navigation')).toBeHidden();
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
  await expect(page.getByText('ORT175-004417')).toBeVisible();
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor)).toBe('rgb(255, 255, 255)');
});

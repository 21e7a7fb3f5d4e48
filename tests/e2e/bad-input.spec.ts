// Bad input gets a sentence beside its field, with the range and the unit, and nothing is stored.
import type { Page } from '@playwright/test';
import { openDevice, phone } from './lib/browser.mjs';
import { cutShort, fromTheFuture, receive, saveBundle, withOtherText } from './lib/bundles.ts';
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

async function facts(page: Page): Promise<string> {
  await goTo(page, '#/bike/shelf');
  return (
    (await page
      .getByText(/\d+ facts/)
      .first()
      .textContent()) ?? ''
  );
}

test.beforeEach(async ({ page }) => {
  await openDemo(page);
});

for (const teeth of ['0', '200']) {
  test(`${teeth} teeth on the gearing page are refused beside the sprocket`, async ({ page }) => {
    const before = await facts(page);
    await goTo(page, '#/numbers/gearing');
    await page.getByRole('button', { name: /^Wheel sprocket: .* Type/ }).click();
    await typeOnPad(page, teeth);
    await expect(page.getByRole('alert')).toContainText(`Wheel sprocket: ${teeth} teeth is outside 20 to 80 teeth`);
    await expect(page.getByRole('button', { name: 'Try on the bike' })).toHaveCount(0);
    expect(await facts(page)).toBe(before);
  });

  test(`${teeth} teeth on the bike are refused beside the field and not stored`, async ({ page }) => {
    const before = await facts(page);
    await goTo(page, '#/bike/spec/standard/drive');
    await page.getByRole('button', { name: /^Gearbox sprocket \d/ }).click();
    await typeOnPad(page, teeth);
    await page.getByRole('button', { name: 'Save' }).click();
    await expect(page.locator('.field', { hasText: 'Gearbox sprocket' }).getByRole('alert')).toContainText('outside 9 to 30 teeth');
    expect(await facts(page)).toBe(before);
  });
}

test('the pad says the range while a number outside is typed', async ({ page }) => {
  await goTo(page, '#/numbers/gearing');
  await page.getByRole('button', { name: /^Gearbox sprocket: .* Type/ }).click();
  const pad = page.getByRole('dialog');
  await pad.getByRole('textbox').fill('99');
  await expect(pad.getByRole('status')).toContainText('9 to 30 teeth');
  await expect(pad.getByRole('textbox')).toHaveAttribute('aria-invalid', 'true');
});

test('what is no number is not entered', async ({ page }) => {
  const before = await facts(page);
  await goTo(page, '#/numbers/gearing');
  await page.getByRole('button', { name: /^Gearbox sprocket: .* Type/ }).click();
  const pad = page.getByRole('dialog');
  await pad.getByRole('textbox').fill('NaN');
  await pad.getByRole('button', { name: 'Enter', exact: true }).click();
  await expect(pad.getByRole('status')).toContainText('Type a number.');
  await pad.getByRole('button', { name: 'Close' }).click();
  // An address typed by hand does not get a number past the door either.
  await goTo(page, '#/numbers/gearing?front=NaN&rear=41');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Gearing');
  expect(await facts(page)).toBe(before);
});

test('negative watts are refused beside the field, tried and recorded', async ({ page }) => {
  const before = await facts(page);
  for (const [start, send] of [
    [async () => (await goTo(page, '#/numbers/load'), page.getByRole('button', { name: /Headlamp/ }).click()), 'Work it out'],
    [async () => (await goTo(page, '#/bike/spec'), page.getByRole('link', { name: /Headlamp/ }).click()), 'Save'],
  ] as const) {
    await start();
    await page.getByRole('button', { name: /^Power of one/ }).click();
    // The pad of a power has no sign; a keyboard has.
    await page.getByRole('dialog').last().getByRole('textbox').fill('-35');
    await page.getByRole('dialog').last().getByRole('button', { name: 'Enter', exact: true }).click();
    await page.getByRole('button', { name: send }).click();
    await expect(page.locator('.field', { hasText: 'Power of one' }).getByRole('alert')).toContainText('−35 W is outside 0 to 500 W');
  }
  expect(await facts(page)).toBe(before);
});

test('a job without a title and a bike without a name are refused', async ({ page }) => {
  const before = await facts(page);
  await goTo(page, '#/plan/new');
  await page.getByLabel('What is done').fill('   ');
  await press(page, 'Save');
  await expect(page.locator('.field', { hasText: 'What is done' }).getByRole('alert')).toContainText('write 1 to 120 characters');
  await goTo(page, '#/bike/who');
  await page.getByLabel('Name of the bike').fill('');
  await press(page, 'Save');
  await expect(page.locator('.field', { hasText: 'Name of the bike' }).getByRole('alert')).toContainText('write 1 to 120 characters');
  expect(await facts(page)).toBe(before);
});

test('a refused form goes to the field, and stops saying it once the field is changed', async ({ page }) => {
  await goTo(page, '#/plan/new');
  const title = page.getByLabel('What is done');
  const air = page.getByRole('button', { name: /^Not colder than/ });
  await air.click();
  await typeOnPad(page, '12');
  await expect(air, 'the keyboard goes back to what opened the pad').toBeFocused();
  await press(page, 'Save');
  await expect(title).toBeFocused();
  await expect(title).toBeInViewport();
  await expect(page.getByRole('alert')).toHaveCount(1);
  await title.fill('Refit the tank');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await press(page, 'Add a step');
  await expect(page.getByLabel('Step 1', { exact: true })).toBeFocused();
});

test('a product without any time on its sheet is refused beside the field', async ({ page }) => {
  const before = await facts(page);
  await goTo(page, '#/numbers/cure');
  await press(page, 'Change the data');
  for (const field of ['Touch dry', 'Recoat from', 'Recoat until', 'Handle', 'Full cure']) {
    await page.getByRole('button', { name: new RegExp(`^${field}`) }).click();
    await page.getByRole('dialog').last().getByRole('button', { name: 'Not known' }).click();
  }
  await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
  await expect(page.locator('.field', { hasText: 'Full cure after' }).getByRole('alert')).toContainText(/full cure/i);
  expect(await facts(page)).toBe(before);
});

test('bundles that are no bundle, cut short, or from a newer program are refused and change nothing', async ({ page }) => {
  const bundle = await saveBundle(page);
  const before = await facts(page);
  for (const [name, bytes, says] of [
    ['note.txt', Buffer.from('This is no bundle at all, only a text.'.repeat(40)), /not|no /i],
    ['short.layshaft', cutShort(bundle), /damaged|cut|short/i],
    ['future.layshaft', fromTheFuture(bundle), /newer/i],
  ] as const) {
    await goTo(page, '#/bike/bundle');
    await receive(page, name, bytes);
    await expect(page.getByRole('alert'), name).toContainText('Nothing was taken in.');
    await expect(page.getByRole('alert'), name).toContainText(says);
    expect(await facts(page), name).toBe(before);
  }
});

test('a bundle of another bike is offered as a second one', async ({ page, browser, watch }) => {
  const elsewhere = await openDevice(browser, phone);
  watch.on(elsewhere);
  const other = await elsewhere.newPage();
  await other.goto('./#/start/own');
  await settled(other);
  await other.getByLabel('Name of the bike').fill('Grandfather’s');
  await press(other, 'Next');
  await other.getByRole('heading', { name: 'What kind of bike is it?' }).waitFor();
  await settled(other);
  const bundle = await saveBundle(other);
  await elsewhere.close();

  await goTo(page, '#/bike/bundle');
  await receive(page, 'other.layshaft', bundle);
  await expect(page.getByRole('alert')).toContainText('Grandfather’s');
  await goTo(page, '#/bike/shelf');
  await expect(page.getByText('Grandfather’s')).toHaveCount(0);

  await goTo(page, '#/bike/bundle');
  await receive(page, 'other.layshaft', bundle);
  await press(page, 'Add it as a second bike');
  await expect(page.getByText('Taken in.')).toBeVisible();
  await goTo(page, '#/bike/shelf');
  await expect(page.getByRole('heading', { name: /Grandfather’s/ })).toBeVisible();
  await expect(page.getByRole('heading', { name: /Orrin Tern 175/ })).toBeVisible();
});

test('what a bundle could not bring is named with both values, and what was here stays', async ({ page }) => {
  const bundle = await saveBundle(page);
  const before = await facts(page);
  await goTo(page, '#/bike/bundle');
  await receive(page, 'copied.layshaft', withOtherText(bundle, 'Fork seals and fork oil', 'Fork seals, no fork oil'));
  const told = page.getByRole('status').filter({ hasText: 'Taken in.' });
  // The part and the job that fits it have the same title.
  await expect(told).toContainText('2 facts could not be taken in.');
  const named = (fact: string) => new RegExp(`${fact}.*Stays here.*Fork seals and fork oil.*In the bundle.*Fork seals, no fork oil`, 's');
  await expect(told.getByRole('listitem')).toHaveText([named('Job: What is done'), named('Part: What it is')]);
  expect(await facts(page)).toBe(before);
  await goTo(page, '#/bike/parts');
  await expect(page.getByText('Fork seals and fork oil')).toBeVisible();
});

// The pages of numbers: an answer that moves with what is typed, a bad number refused beside its field, and a brake that is
// tried, fitted and taken back.
import type { Page } from '@playwright/test';
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

const answer = (page: Page) => page.locator('.answer');
const field = (page: Page, label: string) => page.locator('.field', { hasText: new RegExp(`^\\s*${label}`) });

/** Types a number into a field of the page. */
async function type(page: Page, label: string, text: string) {
  await field(page, label).getByRole('button').click();
  await typeOnPad(page, text);
  await settled(page);
}

/** Picks a row from the sheet behind a field. */
async function pick(page: Page, label: string, word: string | RegExp) {
  await page.getByRole('button', { name: new RegExp(`^${label}`) }).click();
  await page.getByRole('dialog').getByRole('button', { name: word }).first().click();
  await settled(page);
}

test.beforeEach(async ({ page }) => {
  await openDemo(page);
});

test('every calculation is reached from the page of numbers', async ({ page }) => {
  for (const name of ['Gearing', 'Choose sprockets', 'Chain wear', 'Thrust and top speed', 'Load', 'Brakes', 'Cure', 'Threads', 'Filling', 'Mixing', 'Wire and fuse']) {
    await goTo(page, '#/numbers');
    await page.getByRole('link', { name: new RegExp(`^${name}`) }).click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(name);
  }
});

test('a second-hand caliper on another master cylinder: tried, seen in ripple, fitted, taken back', async ({ page }) => {
  await goTo(page, '#/numbers/brakes');
  await expect(answer(page).first()).toContainText('0.0 %');
  await expect(page.getByRole('button', { name: 'As fitted', exact: true })).toBeDisabled();
  await type(page, 'Master cylinder, bore', '14');
  await type(page, 'Piston', '27');
  await page.getByRole('button', { name: 'Pistons, one side: one more' }).click();
  await settled(page);
  // 9.00 on 90.95 mm against 7.44 on 96.5 mm: 14 % more force; 7.44 against 9.00: 17 % less travel.
  await expect(answer(page).first()).toContainText('+14 %');
  await expect(answer(page).nth(1)).toContainText('−17 %');
  await expect(page.getByText('from 9.00 : 1 to 7.44 : 1')).toBeAttached();
  await expect(page.getByText(/commonly met/).first()).toBeVisible();

  await press(page, 'Try on the bike');
  const ripple = page.getByRole('dialog');
  await expect(ripple).toContainText('front brake with 2 × 27 mm on one side and a 14 mm master cylinder');
  await expect(ripple.getByRole('listitem').filter({ hasText: 'Hydraulic ratio, front brake' })).toContainText('7.44');
  await expect(ripple.getByRole('listitem').filter({ hasText: 'force at the lever against as made' })).toContainText('14.0 %');
  await expect(ripple.getByRole('listitem').filter({ hasText: 'lever travel against as made' })).toContainText('−17.3 %');
  await expect(ripple).toContainText('crosses a limit');
  await expect(ripple).toContainText('bleed the front brake');
  await ripple.getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('Front brake: the tried parts are fitted.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'As fitted', exact: true })).toBeDisabled();

  await press(page, 'Undo');
  await expect(page.getByText('Taken back.')).toBeVisible();
  await goTo(page, '#/numbers/brakes');
  await expect(field(page, 'Master cylinder, bore')).toContainText('12.7 mm');
});

test('a 14 mm master cylinder alone: more hand, less travel, fitted and kept', async ({ page }) => {
  await goTo(page, '#/numbers/brakes');
  await type(page, 'Master cylinder, bore', '14');
  // The areas are as 14² to 12.7²: 21.5 % more force, 17.7 % less travel.
  await expect(answer(page).first()).toContainText('+22 %');
  await expect(answer(page).nth(1)).toContainText('−18 %');
  await press(page, 'Try on the bike');
  const ripple = page.getByRole('dialog');
  await expect(ripple.getByRole('listitem').filter({ hasText: 'force at the lever against as made' })).toContainText('21.5 %');
  await expect(ripple.getByRole('listitem').filter({ hasText: 'lever travel against as made' })).toContainText('−17.7 %');
  await ripple.getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('Front brake: the tried parts are fitted.')).toBeVisible();
  await goTo(page, '#/numbers/brakes');
  await expect(field(page, 'Master cylinder, bore')).toContainText('14 mm');
  await expect(answer(page).first()).toContainText('+22 %');
});

for (const [page_, label, text, says] of [
  ['brakes', 'Master cylinder, bore', '14', '+22 % effort −18 % travel'],
  ['threads?diameterMm=9.9', 'Pitch', '1.5', 'M10 × 1.5'],
  ['filling', 'Another volume', '2', '2 × 1 L'],
  ['mixing', 'Fuel', '4', '80 mL'],
  ['mixing?mix=cover', 'Area', '2', '3 to 4 cans'],
  ['wire', 'Length to the load', '9', 'mm² wire'],
] as const) {
  test(`${page_}: the answer moves over the pad while ${label} is typed`, async ({ page }) => {
    await goTo(page, `#/numbers/${page_}`);
    await field(page, label).getByRole('button').click();
    const pad = page.getByRole('dialog');
    await pad.getByRole('button', { name: 'Clear' }).click();
    for (const key of text) await pad.getByRole('button', { name: key === '.' ? 'decimal point' : key, exact: true }).click();
    await expect(pad).toContainText(says);
  });
}

test('what a fitted brake is stays fitted after a reload', async ({ page }) => {
  await goTo(page, '#/numbers/brakes?leverRatio=6&fluid=dot4');
  await press(page, 'Try on the bike');
  await page.getByRole('dialog').getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('Front brake: the tried parts are fitted.')).toBeVisible();
  await page.goto('./#/bike/spec/fitted/front-brake');
  await page.reload();
  await settled(page);
  await expect(field(page, 'Lever ratio')).toContainText('6');
  await expect(page.getByRole('button', { name: /^Brake fluid/ })).toContainText('DOT 4');
  await expect(field(page, 'Master cylinder')).toContainText('12.7 mm');
});

test('lever ratio and a hand give pressure and a way to stop; the rules stand beside it', async ({ page }) => {
  await goTo(page, '#/numbers/brakes');
  await expect(page.getByText(/cannot be worked out yet/)).toBeVisible();
  await type(page, 'Lever ratio', '6');
  // 100 N x 6 on a bore of 12.7 mm: 600 N on 126.7 mm² are 47.4 bar.
  await expect(page.getByRole('definition').filter({ hasText: 'bar' })).toContainText('47.4 bar');
  await expect(page.getByText(/cannot be worked out yet/)).toHaveCount(0);
  await expect(page.getByRole('img', { name: /Stopping from 60 km\/h\. This brake alone: \d+ m at best/ })).toBeVisible();
  await expect(page.getByText(/Directive 93\/14\/EEC, Annex/).first()).toBeVisible();
  await type(page, 'Stop that was measured', '40');
  await expect(page.getByText('The measured stop means')).toBeVisible();
  await type(page, 'Stop that was measured', '3');
  await expect(field(page, 'Stop that was measured').getByRole('alert')).toContainText('reaction');
});

test('silicone is never poured into glycol', async ({ page }) => {
  await goTo(page, '#/numbers/brakes');
  await pick(page, 'In the bike', /^DOT 4/);
  await pick(page, 'To be poured in', /^DOT 5 /);
  await expect(page.getByText('▲ Never together.')).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'Stopper.' })).toContainText('must never meet');
});

test('a drum wants its cam lever and then says how it stands', async ({ page }) => {
  await goTo(page, '#/numbers/brakes');
  await page.getByRole('radio', { name: 'Rear' }).check();
  await expect(answer(page)).toContainText('–');
  await type(page, 'Cam lever, length', '70');
  await type(page, 'Angle to the rod at rest', '60');
  await type(page, 'Travel of the rod, brake on', '25');
  await expect(answer(page)).toContainText(/9\d\s%/);
  await expect(page.getByRole('img', { name: /Drum from the side\. Cam lever at rest 60\s?°/ })).toBeVisible();
  await type(page, 'Cam lever, length', '5');
  await expect(field(page, 'Cam lever, length').getByRole('alert')).toContainText('5 mm is outside 20 to 200 mm');
});

for (const [page_, label, text, says] of [
  ['brakes', 'Master cylinder, bore', '0', '0 mm is outside 5 to 80 mm'],
  ['brakes', 'Force at the lever', '5000', '5 000 N is outside 0 to 1 000 N'],
  ['threads?pitchMm=1.25', 'Outer diameter', '90', '90 mm is outside 1.5 to 26 mm'],
  ['threads?diameterMm=9.9', 'Pitch', '9', '9 mm is outside 0.2 to 4 mm'],
  ['filling', 'Another volume', '90', '90 L is outside 0.01 to 60 L'],
  ['filling', 'A cup of another size', '0', '0 mL is outside 1 to 20 000 mL'],
  ['mixing', 'Parts of fuel', '2', '2 is outside 10 to 200'],
  ['mixing?mix=twoPart', 'Parts of hardener', '0', '0 is outside 0.1 to 1 000'],
  ['mixing?mix=cover', 'Area', '0', '0 m² is outside 0.001 to 100 m²'],
  ['wire', 'Length to the load', '0', '0 m is outside 0.01 to 30 m'],
  ['wire', 'Temperature of the wire', '150', '150 °C is outside −30 to 120 °C'],
] as const) {
  test(`${page_}: ${label} of ${text} is refused beside the field`, async ({ page }) => {
    await goTo(page, `#/numbers/${page_}`);
    await type(page, label, text);
    await expect(field(page, label).getByRole('alert')).toContainText(says);
    await expect(page.getByRole('button', { name: 'Try on the bike' })).toHaveCount(0);
  });
}

test('a measured screw is named with what it could be taken for', async ({ page }) => {
  await goTo(page, '#/numbers/threads');
  await expect(page.getByText(/Ten turns are read better than one/)).toBeVisible();
  await type(page, 'Outer diameter', '9.9');
  await page.getByRole('radio', { name: 'Turns counted' }).check();
  await type(page, 'Turns counted', '10');
  await type(page, 'Over a length of', '12.5');
  await expect(answer(page).first()).toContainText('M10 × 1.25');
  await expect(page.getByRole('button', { name: /^3\/8-20 BSF/ })).toBeVisible();
  await page.getByRole('button', { name: /^3\/8-20 BSF/ }).click();
  await expect(answer(page).first()).toContainText('3/8-20 BSF');
});

test('torque is a band, and the maker’s figure wins with its source', async ({ page }) => {
  await goTo(page, '#/numbers/threads?diameterMm=7.9&pitchMm=1.25');
  await pick(page, 'Class on the head', '8.8');
  await expect(answer(page).nth(1)).toContainText(/\d+\.\d – \d+\.\d\s*N m/);
  await type(page, 'Torque in the maker’s manual', '22');
  await expect(page.locator('.field', { hasText: 'Where it stands' }).getByRole('alert')).toContainText('write 1 to 120 characters');
  await page.getByLabel('Where it stands').fill('Workshop manual, page 31');
  await expect(answer(page).nth(1)).toContainText('22.0');
  await expect(answer(page).nth(1)).toContainText('the maker’s figure wins: Workshop manual, page 31');
});

test('where a screw must not be replaced the page says so', async ({ page }) => {
  await goTo(page, '#/numbers/threads?diameterMm=7.9&pitchMm=1.25');
  await pick(page, 'Where it sits', 'brake');
  await expect(page.getByText('▲ Only the maker’s part.')).toHaveCount(1);
  await pick(page, 'It goes into', 'cast aluminium');
  // 1.6 to 2.5 diameters of 8 mm.
  await expect(page.getByRole('definition').filter({ hasText: '12.8' })).toContainText('12.8 mm to 20.0 mm');
});

test('a filling is poured with the cups at hand, and the cups are remembered', async ({ page }) => {
  await goTo(page, '#/numbers/filling?litres=1.8');
  await expect(answer(page)).toContainText('1 L + 800 mL');
  await type(page, 'A cup of another size', '700');
  await expect(page.getByRole('button', { name: /^Cups that you own/ })).toContainText('700 mL');
  await expect(answer(page)).toContainText('2 × 700 mL + 400 mL');
  await page.reload();
  await settled(page);
  await expect(answer(page)).toContainText('2 × 700 mL + 400 mL');
  await pick(page, 'What is filled', /^Engine oil, with filter/);
  await expect(answer(page)).toContainText('700 mL + 500 mL');
});

test('premix, two conventions of thinner, and cans for an area', async ({ page }) => {
  await goTo(page, '#/numbers/mixing');
  await type(page, 'Fuel', '4');
  await type(page, 'Parts of fuel', '40');
  await expect(answer(page)).toContainText('100mL');
  await page.getByRole('radio', { name: 'Two-part' }).check();
  await expect(page.getByRole('heading', { name: 'The other way of reading the sheet' })).toBeVisible();
  // 200 mL at 4 : 1 with 10 % of both: 200 / 1.1 = 181.8 mL, of which 145.5 are base.
  await expect(page.getByRole('definition').first()).toContainText('145.5 mL');
  await page.getByRole('radio', { name: 'For an area' }).check();
  await expect(answer(page)).toContainText('1 can');
  await type(page, 'Area', '2');
  // 2 m², 2 coats, 8 m²/L, 40 to 60 % lost: 833 to 1250 mL in cans of 400 mL.
  await expect(answer(page)).toContainText('3 to 4 cans');
});

test('wire and fuse for a lamp of the bike, and for a wire at hand', async ({ page }) => {
  await goTo(page, '#/numbers/wire');
  await pick(page, 'Load', /^Headlamp/);
  // 35 W at 12 V: 2.92 A, of which a fuse carries 80 %.
  await expect(field(page, 'Current')).toContainText('2.92 A');
  await expect(answer(page).nth(1)).toContainText('5A');
  await expect(answer(page).nth(1)).toContainText('fuse, tan');
  await type(page, 'A wire that you have', '0.2');
  await expect(page.getByRole('listitem').filter({ hasText: '0.2 mm² is not enough' })).toBeVisible();
  await type(page, 'Current', '60');
  await expect(page.getByText('no wire of the list serves this load')).toBeVisible();
});

test('a maker’s torque found at the thread is kept with the bike, and put away again', async ({ page }) => {
  await goTo(page, '#/numbers/threads?diameterMm=7.9&pitchMm=1.25&propertyClass=8.8&torqueNm=22&source=Manual%2C+page+31');
  await page.getByRole('link', { name: 'Keep it with the bike' }).click();
  await press(page, 'Save');
  await expect(page.locator('.field', { hasText: 'Joint' }).getByRole('alert')).toContainText('write 1 to 120 characters');
  await page.getByLabel('Joint').fill('Handlebar clamp');
  await press(page, 'Save');
  await expect(page.getByText('The torque is kept.')).toBeVisible();
  await goTo(page, '#/bike/torques');
  const row = page.getByRole('link', { name: /^Handlebar clamp/ });
  await expect(row).toContainText('22.0');
  await expect(row).toContainText('Manual, page 31');
  await row.click();
  await press(page, 'Put it away');
  await expect(page.getByRole('link', { name: /^Rear axle nut/ })).toBeVisible();
  await expect(row).toHaveCount(0);
});

test('sprockets, LED indicators and another brake are tried together, then fitted at once', async ({ page }) => {
  await goTo(page, '#/numbers/gearing?front=16&rear=38');
  await press(page, 'Try on the bike');
  await press(page, 'Try more changes with it');
  await goTo(page, '#/numbers/load');
  await page.locator('button.row', { hasText: 'Indicator' }).first().click();
  await page.getByRole('dialog').getByRole('button', { name: /^Power of one/ }).click();
  await typeOnPad(page, '1.5');
  await page.getByRole('dialog').getByRole('button', { name: 'Work it out' }).click();
  await press(page, 'Try on the bike');
  await expect(page.getByRole('dialog')).toContainText('16 and 38 teeth');
  await press(page, 'Try more changes with it');
  await goTo(page, '#/numbers/brakes?masterMm=14&pistonMm=27&pistons=2');
  await press(page, 'Try on the bike');
  await press(page, 'Try more changes with it');
  await goTo(page, '#/numbers');
  await page.getByRole('button', { name: /^Tried together/ }).click();
  const ripple = page.getByRole('dialog');
  for (const what of ['Hydraulic ratio, front brake', 'speedometer', 'load']) await expect(ripple).toContainText(new RegExp(what, 'i'));
  await ripple.getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('All of it is fitted.')).toBeVisible();
  await goTo(page, '#/numbers');
  await expect(page.getByRole('link', { name: /^Gearing/ })).toContainText('16 / 38');
  await expect(page.getByRole('button', { name: /^Tried together/ })).toHaveCount(0);
});

test('the handbook finds a formula by a word, and says its symbols, ranges and source', async ({ page }) => {
  await goTo(page, '#/numbers');
  await page.getByRole('link', { name: /^Handbook/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Handbook');
  const all = page.getByRole('status').filter({ hasText: /formulas$/ });
  await expect(all).toHaveText(/^\d+ formulas$/);
  await page.getByLabel('Search').fill('preload yield hexagon');
  await expect(all).toHaveText(/^1 of \d+ formulas$/);
  await page.getByText('Preload and torque of a screw').click();
  const entry = page.locator('details[open]');
  await expect(entry).toContainText('1.5 to 26\u00a0mm');
  await expect(entry).toContainText('VDI 2230');
  await page.getByLabel('Search').fill('no such thing');
  await expect(page.getByText('No formula holds all of these words')).toBeVisible();
});

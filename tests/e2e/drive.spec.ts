// The drive: sprockets that are chosen for a goal and fitted, a chain that is measured, a top speed that moves with rider and
// road, and what a speedometer's corrector must do. The expected figures are worked out beside each step.
import type { Page } from '@playwright/test';
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

const answer = (page: Page) => page.locator('.answer');
const field = (page: Page, label: string) => page.locator('.field', { hasText: new RegExp(`^\\s*${label}`) });
/** The rows of the list of sprockets. */
const pairs = (page: Page) => page.locator('ol button');
/** The value of a ruled line. */
const line = (page: Page, label: string) => page.locator('dl > div', { has: page.locator('dt', { hasText: new RegExp(`^(▲ )?${label}$`) }) }).getByRole('definition');

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

test('a speed at an engine speed puts the pairs that meet it first', async ({ page }) => {
  await goTo(page, '#/numbers/sprockets');
  await expect(answer(page)).toContainText('15 / 41');
  await page.getByRole('radio', { name: 'A speed at an engine speed' }).check();
  await expect(page.getByText(/Say both numbers/)).toBeVisible();
  await type(page, 'Road speed', '90');
  await type(page, 'Engine speed', '6500');
  await expect(page.getByText(/Say both numbers/)).toHaveCount(0);
  // 6500 rpm x 1915.1 mm x 60 / (10^6 x 90 km/h x 3.333 x 0.833) = 2.989; the nearest whole pairs have 3.000, 0.4 % short.
  await expect(page.getByText('A ratio of 2.989 would meet it exactly.')).toBeVisible();
  await expect(answer(page)).toContainText('−0.4 %');
  await expect(pairs(page).first()).toContainText('Ratio 3.000');
  await expect(pairs(page).first()).toContainText('fits');
  // In third at the same speeds: 2.989 x 0.833 / 1.263 = 1.971.
  await page.getByRole('button', { name: 'In gear: one less' }).click();
  await page.getByRole('button', { name: 'In gear: one less' }).click();
  await settled(page);
  await expect(page.getByText('A ratio of 1.971 would meet it exactly.')).toBeVisible();
});

test('a pair is chosen, looked at, tried, fitted and taken back', async ({ page }) => {
  await goTo(page, '#/numbers/sprockets?goal=taller&tallerPercent=15');
  const chosen = pairs(page).filter({ hasText: '16 / 38' });
  // 41/15 over 38/16: 15.1 % more speed at the same engine speed.
  await expect(chosen).toContainText('+15.1 % speed');
  await chosen.click();
  const sheet = page.getByRole('dialog', { name: '16 in front, 38 behind' });
  await expect(sheet.getByRole('definition').first()).toHaveText('2.375');
  await expect(sheet).toContainText('−13.1 %');
  await expect(sheet.getByRole('link', { name: 'Gearing with it' })).toHaveAttribute('href', '#/numbers/gearing?front=16&rear=38');
  await expect(sheet).toContainText('116 links');
  await sheet.getByRole('button', { name: 'Try on the bike' }).click();
  const ripple = page.getByRole('dialog', { name: 'On the bike' });
  await expect(ripple.getByRole('listitem').filter({ hasText: 'Final drive ratio' })).toContainText('2.38');
  await ripple.getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('16 and 38 teeth are fitted.')).toBeVisible();
  await settled(page);
  // The goal counts from what is fitted now; the title block says what that is.
  await expect(page.getByText('16 / 38', { exact: true }).first()).toBeVisible();

  await press(page, 'Undo');
  await expect(page.getByText('Taken back.')).toBeVisible();
  await goTo(page, '#/numbers/sprockets');
  await expect(page.locator('ol button.fitted')).toContainText('15 / 41');
});

test('the list is sorted anew, keeps to the sizes that can be had, and shows what does not fit only when asked', async ({ page }) => {
  // A short adjuster: the axle of some pairs lands outside whatever the links.
  await goTo(page, '#/bike/spec/fitted/drive');
  await type(page, 'Adjuster from', '554');
  await type(page, 'Adjuster to', '558');
  await press(page, 'Save');
  await expect(page.getByText('The bike is changed.')).toBeVisible();
  await goTo(page, '#/numbers/sprockets');
  await expect(page.getByText(/of 75 pairs/)).toBeVisible();
  const before = Number(/(\d+) of 75/.exec((await page.getByText(/of 75 pairs/).textContent()) ?? '')?.[1]);
  expect(before).toBeGreaterThan(5);
  expect(before).toBeLessThan(75);
  await expect(page.getByText('▲ does not fit')).toHaveCount(0);
  await page.getByRole('radio', { name: 'All of them' }).check();
  await expect(page.getByText(/^75 of 75 pairs/)).toBeVisible();
  await pick(page, 'Sorted by', 'shortest first');
  // Shortest of 13 to 17 in front and 34 to 48 behind.
  await expect(pairs(page).first()).toContainText('13 / 48');
  await page.getByRole('button', { name: /^Gearbox sprockets that can be had/ }).click();
  await page.getByRole('dialog').getByRole('checkbox', { name: '15' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Done' }).click();
  await settled(page);
  await expect(page.getByText(/^15 of 15 pairs/)).toBeVisible();
  await expect(pairs(page).first()).toContainText('15 / 48');
});

test('a measured chain is named with every limit and its standing, and can be noted', async ({ page }) => {
  await goTo(page, '#/numbers/chain');
  await expect(answer(page)).toContainText('–');
  await expect(page.getByText(/Engine stopped and ignition off/)).toBeVisible();
  // 20 pitches of 12.7 mm are 254.0 mm new.
  await expect(field(page, 'Length over them')).toContainText('254.0 mm');
  await type(page, 'Length over them', '256');
  await expect(answer(page)).toContainText('0.79 %');
  await expect(answer(page)).toContainText('Inside the limits');
  await type(page, 'Length over them', '260.4');
  await expect(answer(page)).toContainText('2.52 %');
  await expect(answer(page)).toContainText('Nobody can say yet');
  await type(page, 'Length over them', '262.5');
  await expect(answer(page)).toContainText('3.35 %');
  await expect(answer(page)).toContainText('Worn out');
  await expect(page.getByRole('listitem').filter({ hasText: 'Usual with chain makers' })).toContainText('unconfirmed: second-hand');
  // 3 % of 254.0 mm is 261.62 mm.
  await expect(page.getByRole('listitem').filter({ hasText: 'Usual with chain makers' })).toContainText('261.6 mm on the rule');
  await expect(page.getByRole('listitem').filter({ hasText: "Usual in makers' manuals" })).toContainText('unconfirmed: from memory');
  await type(page, 'Limit of your manual', '5');
  await expect(answer(page)).toContainText('Inside the limits');
  await press(page, 'Note this wear');
  await expect(page.getByText('3.35 % is noted.')).toBeVisible();
  await goTo(page, '#/numbers/chain');
  await expect(answer(page)).toContainText('noted last: 3.35 %');
});

test('slack is judged at the tightest place against the manual', async ({ page }) => {
  await goTo(page, '#/numbers/chain');
  await type(page, 'Reading 1', '20');
  await expect(line(page, 'Against the manual')).toContainText('not known');
  await type(page, 'Reading 2', '22');
  await expect(line(page, 'Against the manual')).toContainText('in its range');
  await type(page, 'Reading 3', '12');
  await expect(line(page, 'Tightest place')).toContainText('12 mm');
  await expect(line(page, 'Difference')).toContainText('10 mm');
  await expect(page.getByRole('listitem').filter({ hasText: 'Slacken it there' })).toBeVisible();
  await expect(page.getByRole('img', { name: /^Slack, place by place: 20\s?mm, 22\s?mm, 12\s?mm/ })).toBeVisible();
  await type(page, 'Slack by the manual, from', '30');
  await expect(field(page, 'Slack by the manual, to').getByRole('alert')).toContainText('the most must not be below the least');
});

test('top speed moves with rider, wind and grade; assumptions are named; no one is sent to try it', async ({ page }) => {
  await goTo(page, '#/numbers/thrust');
  const speed = async () => Number(/\d+/.exec((await answer(page).locator('.value').textContent()) ?? '')?.[0]);
  const still = await speed();
  expect(still).toBeGreaterThan(90);
  expect(still).toBeLessThan(140);
  await expect(page.getByText(/Do not try top speed on a public road/)).toBeVisible();
  await expect(page.getByText(/of the power reaches the wheel/)).toBeVisible();
  await type(page, 'Head wind', '30');
  const windy = await speed();
  expect(windy).toBeLessThan(still - 5);
  await type(page, 'Grade', '6');
  expect(await speed()).toBeLessThan(windy - 5);
  await press(page, 'As fitted again');
  await settled(page);
  expect(await speed()).toBe(still);
  // A drop from first to second at 9500 rpm: 9500 x 1.722 / 2.769 = 5908 rpm, 38 %.
  await expect(page.getByRole('row', { name: /1 → 2/ })).toContainText(/5.?908/);
  await expect(page.getByRole('row', { name: /1 → 2/ })).toContainText('38 %');
});

test('other sprockets leave top gear too tall, and the ripple can fit them', async ({ page }) => {
  await goTo(page, '#/numbers/thrust?frontTeeth=17&rearTeeth=36');
  await expect(line(page, 'Gearing of top')).toContainText('Over-geared: too tall');
  await goTo(page, '#/numbers/thrust?frontTeeth=13&rearTeeth=48');
  await expect(line(page, 'Gearing of top')).toContainText('Under-geared: too short');
  await goTo(page, '#/numbers/thrust');
  await expect(page.getByRole('button', { name: 'As fitted', exact: true })).toBeDisabled();
  await page.getByRole('button', { name: 'Gearbox sprocket: one more' }).click();
  await settled(page);
  await press(page, 'Try on the bike');
  await page.getByRole('dialog').getByRole('button', { name: 'Fit it' }).click();
  await expect(page.getByText('16 and 41 teeth are fitted.')).toBeVisible();
});

test('a taller gearing needs a corrector, and the page says which', async ({ page }) => {
  await goTo(page, '#/numbers/gearing?front=16&rear=38');
  await expect(page.getByText('A corrector is needed.')).toBeVisible();
  // It reads 0.8689 x 1.04 = 0.9037 of the true speed: at least 1 / 0.9037 = 1.107, at most 136/120 of that = 1.254;
  // no ratio with 1, 2 or 3 behind lies between, 5/4 does.
  await expect(line(page, 'Ratio inside the band')).toContainText('1.107 to 1.254');
  await expect(line(page, 'Simplest gears inside the band')).toContainText('5 drive 4');
  await expect(page.getByRole('row', { name: /^80/ })).toContainText('▲ 72.3');
  await expect(page.getByText(/what an inspection asks of a machine in use is national law/)).toBeVisible();
  await goTo(page, '#/numbers/gearing');
  await expect(page.getByText('No corrector is needed.')).toBeVisible();
});

for (const [page_, label, text, says] of [
  ['sprockets?goal=taller&tallerPercent=5', 'Taller by', '500', '500 % is outside −50 to 100 %'],
  ['sprockets?goal=speedAtRpm&engineRpm=6000', 'Road speed', '0', '0 km/h is outside 1 to 300 km/h'],
  ['sprockets?goal=speedAtRpm&roadSpeedKmh=80', 'Engine speed', '5', '5 rpm is outside 100 to 20 000 rpm'],
  ['chain', 'Pitches measured over', '0', '0 is outside 4 to 200'],
  ['chain', 'Length over them', '300', 'count the pitches and check the size'],
  ['chain', 'Limit of your manual', '9', '9 % is outside 0.2 to 5 %'],
  ['chain', 'Reading 1', '900', '900 mm is outside 0 to 200 mm'],
  ['thrust', 'Drag area with rider', '9', '9 m² is outside 0.1 to 2 m²'],
  ['thrust', 'Grade', '90', '90 % is outside −30 to 40 %'],
  ['thrust', 'Rider, luggage, fluids', '900', '900 kg is outside 0 to 400 kg'],
  ['thrust', 'Peak power at', '90000', '90 000 rpm is outside'],
  ['thrust?rollingCoefficient=0.02', 'Tyre pressure', '2', 'not both'],
] as const) {
  test(`${page_}: ${label} of ${text} is refused beside the field`, async ({ page }) => {
    await goTo(page, `#/numbers/${page_}`);
    await type(page, label, text);
    const beside = page_.includes('rollingCoefficient') ? 'Rolling coefficient' : label;
    await expect(field(page, beside).getByRole('alert')).toContainText(says);
    await expect(page.getByRole('button', { name: 'Try on the bike' })).toHaveCount(0);
  });
}

test('what the drive brought is entered on the bike and seen there', async ({ page }) => {
  await goTo(page, '#/bike/spec/fitted/drive');
  await type(page, 'Gearbox sprocket, most that clear', '16');
  await pick(page, 'Chain is joined by', 'a rivet link');
  await type(page, 'Chain wear limit by the manual', '1.5');
  await press(page, 'Save');
  await expect(page.getByText('The bike is changed.')).toBeVisible();
  await settled(page);
  await expect(page.getByRole('row', { name: /Chain is joined by/ })).toContainText('a rivet link');
  await expect(page.getByRole('row', { name: /Chain wear limit/ })).toContainText('1.5 %');
  await goTo(page, '#/numbers/sprockets?shown=all');
  // 13 to 16 in front and 34 to 48 behind.
  await expect(page.getByText(/^60 of 60 pairs/)).toBeVisible();
  await goTo(page, '#/numbers/chain?measuredMm=258');
  // 258 over 254 is 1.57 %, beyond 1.5.
  await expect(answer(page)).toContainText('Worn out');
});

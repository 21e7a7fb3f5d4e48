// A paint job with a moved clock: three coats, a missed window, the alarms as a file, and what came about while nobody looked.
import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { stopClockAt } from './lib/clock.mjs';
import { goTo, press, settled, typeOnPad } from './lib/steps.mjs';
import { wrongTargets } from './lib/targets.ts';
import { expect, openDemo, test } from './lib/watch.ts';

const START = new Date('2026-03-19T08:00:00+01:00');
const HOUR_MS = 3_600_000;
const TITLE = 'Frame spot, left';

/** The garage has an even 12 °C, so that the clock can be reckoned by hand: an hour on the can at 20 °C is this many here. */
const CELSIUS = 12;
const SLOWER = Math.exp(5000 * (1 / (CELSIUS + 273.15) - 1 / (20 + 273.15)));
/** Recoat windows of the typical sheets, hours on the can. */
const CONVERTER = { from: 3, until: 48 };
const RUST_PAINT = { from: 4, until: 24 };

const after = (start: Date, hours: number) => new Date(start.getTime() + hours * HOUR_MS);
/** When a coat has come as far as so many hours on the can. */
const reaches = (laid: Date, hours: number) => after(laid, hours * SLOWER);

/** A moment as the pages write it. */
function said(at: Date): string {
  const part = (options: Intl.DateTimeFormatOptions) => new Intl.DateTimeFormat('en-GB', { timeZone: 'Europe/Berlin', ...options }).format(at);
  return `${part({ weekday: 'short', day: 'numeric', month: 'short' }).replace(',', '')}, ${part({ hour: '2-digit', minute: '2-digit' })}`;
}

const state = (page: Page) => page.locator('p.state');
const coat = (page: Page, name: string) => page.locator('ol li').filter({ has: page.getByText(name, { exact: true }) });

async function lookAt(page: Page, now: Date, hash: string) {
  await stopClockAt(page, now);
  await goTo(page, hash);
}

/** Closes the app at one moment and opens it at another. */
async function away(page: Page, until: Date) {
  await page.goto('about:blank');
  await stopClockAt(page, until);
  await page.goto('./#/today');
  await settled(page);
}

/** Plans the usual order for a rust spot, which has three coats, and begins it. Gives the address of its page. */
async function begin(page: Page): Promise<string> {
  await page.evaluate(async (celsius) => {
    await window.layshaft.act({ kind: 'describePlace', place: { nightCelsius: celsius, dayCelsius: celsius, humidity: 50 } });
    await window.layshaft.act({ kind: 'noteClimate', celsius, humidity: 50 });
  }, CELSIUS);
  await goTo(page, '#/numbers/cure');
  await press(page, 'Plan several coats');
  await settled(page);
  await page.getByRole('button', { name: /^Start from/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Rust spot on the frame' }).click();
  await page.getByLabel('On what').fill(TITLE);
  await settled(page);
  await expect(page.locator('ol li')).toHaveCount(3);
  await press(page, 'Take these coats');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(TITLE);
  await settled(page);
  return page.evaluate(() => location.hash);
}

test.beforeEach(async ({ page }) => {
  await stopClockAt(page, START);
  await openDemo(page);
});

test('three coats: too soon, the open window, a missed one that is sanded, and all on', async ({ page }) => {
  const job = await begin(page);
  await expect(state(page)).toHaveText('nothing is on yet');
  await expect(page.getByRole('note').filter({ hasText: 'Gloves and eye protection' })).toBeVisible();

  // The first coat is wet: its window stands on the clock, with the reason.
  await press(page, '“Converter” goes on now');
  await expect(state(page)).toHaveText('too soon');
  const first = coat(page, 'First rust paint');
  await expect(first).toContainText(`from ${said(reaches(START, CONVERTER.from))}`);
  await expect(first).toContainText(`until ${said(reaches(START, CONVERTER.until))}, then sand first`);
  await expect(first).toContainText('“Converter” on the can at 20 °C: 3 h to 48 h; here at 12 °C: 4.8 h to 77 h.');
  const holds = page.locator('section', { has: page.getByRole('heading', { name: 'Until these times' }) });
  await expect(holds).toContainText('do not fit it to the bike');
  await expect(page.getByRole('button', { name: /goes on now/ })).toHaveCount(0);

  // A coat that is said to be on too soon is refused with the reason, and nothing is stored.
  await press(page, 'It is on already');
  await page.getByRole('dialog').getByRole('button', { name: 'Note it', exact: true }).click();
  await expect(page.getByRole('dialog').getByRole('alert')).toContainText('is not ready for it');
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect(state(page)).toHaveText('too soon');

  // A minute after the window opens it is open; one before, it was not.
  await lookAt(page, after(reaches(START, CONVERTER.from), -1 / 60), job);
  await expect(state(page)).toHaveText('too soon');
  const second = after(reaches(START, CONVERTER.from), 1 / 60);
  await lookAt(page, second, job);
  await expect(state(page)).toHaveText('window open');
  await press(page, '“First rust paint” goes on now');
  await expect(state(page)).toHaveText('too soon');
  await expect(coat(page, 'Second rust paint')).toContainText(`from ${said(reaches(second, RUST_PAINT.from))}`);

  // On Today the paint job stands with what cures.
  await goTo(page, '#/today');
  const card = page.getByRole('link', { name: new RegExp(TITLE) });
  await expect(card).toContainText('2 of 3 coats');
  await expect(card).toContainText('do not fit it to the bike');

  // The window goes by unused: sanding comes first, and says so plainly.
  const shut = reaches(second, RUST_PAINT.until);
  await lookAt(page, after(shut, -1 / 60), job);
  await expect(state(page)).toHaveText('window open');
  await lookAt(page, after(shut, 1 / 60), job);
  await expect(state(page)).toHaveText('sand first');
  await expect(page.getByText('The window was missed.')).toBeVisible();
  await expect(coat(page, 'Second rust paint')).toContainText(`missed: shut since ${said(shut)}`);
  await expect(page.getByRole('button', { name: /goes on now/ })).toHaveCount(0);
  await press(page, 'Sanded and wiped');
  await expect(state(page)).toHaveText('sanded');
  await press(page, '“Second rust paint” goes on now');
  await expect(state(page)).toHaveText('all coats are on');

  // A reload keeps it; it can be ended and taken up again.
  await page.reload();
  await settled(page);
  await expect(state(page)).toHaveText('all coats are on');
  await press(page, 'End this paint job');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Rust spots on the frame');
  await press(page, 'Undo');
  await expect(page.getByRole('link', { name: new RegExp(TITLE) })).toBeVisible();
});

/** Notes a reading of the air so many minutes after the beginning, and looks at the paint job then. Gives the moment. */
async function air(page: Page, job: string, minutes: number, celsius: number, humidity: number): Promise<Date> {
  const now = after(START, minutes / 60);
  await lookAt(page, now, job);
  const climate = { fromMs: now.getTime(), celsius, humidity };
  await page.evaluate((climate) => window.layshaft.act({ kind: 'noteClimate', ...climate }), climate);
  await goTo(page, job);
  return now;
}

/** A warning stands above the button that it is about, and both are seen without scrolling. */
async function leads(warning: Locator, button: Locator) {
  await expect(warning).toBeInViewport({ ratio: 1 });
  await expect(button).toBeInViewport({ ratio: 1 });
  const [above, below] = [await warning.boundingBox(), await button.boundingBox()];
  expect(above!.y + above!.height).toBeLessThanOrEqual(below!.y);
}

test('in cold air the warning leads, the first press asks and stores nothing, and all the same is noted', async ({ page }) => {
  const job = await begin(page);
  const now = await air(page, job, 1, 8, 50);
  const button = page.getByRole('button', { name: '“Converter” goes on now' });
  const warning = page.getByRole('note').filter({ hasText: 'Too cold' });
  await expect(warning).toHaveCount(1);
  await expect(warning).toContainText('It stands still: 8 °C here, and the can asks for 10 °C or more. Warm it, or wait for warmth.');
  await leads(warning, button);
  await expect(page.getByText('“Converter” comes first, but not in this air.')).toBeVisible();
  await expect(coat(page, 'Converter')).toContainText('▲ not in this air');

  const sheet = page.getByRole('dialog', { name: 'Not in this air' });
  for (const leave of ['Wait with it', 'Close']) {
    await button.click();
    await expect(sheet.getByRole('note')).toContainText('Warm it, or wait for warmth.');
    expect(await wrongTargets(page)).toEqual([]);
    await sheet.getByRole('button', { name: leave }).click();
    await expect(sheet).toHaveCount(0);
  }
  await page.reload();
  await settled(page);
  await expect(state(page)).toHaveText('nothing is on yet');
  // Its job shows it; Today does once the job is begun.
  await page.getByRole('link', { name: /Rust spots on the frame/ }).click();
  await expect(page.getByRole('link', { name: new RegExp(TITLE) })).toContainText('▲ “Converter” comes first, but not in this air.');

  await goTo(page, job);
  await button.click();
  await sheet.getByRole('button', { name: 'It goes on all the same' }).click();
  await expect(sheet).toHaveCount(0);
  await expect(state(page)).toHaveText('too soon');
  await expect(coat(page, 'Converter')).toContainText(`on since ${said(now)}`);
});

test('in damp air too it asks first; in warm and dry air one press does it', async ({ page }) => {
  const job = await begin(page);
  await air(page, job, 1, 20, 90);
  const button = page.getByRole('button', { name: '“Converter” goes on now' });
  for (const head of ['Too damp', 'Too near the dew point']) {
    await leads(page.getByRole('note').filter({ hasText: head }), button);
  }
  await button.click();
  await expect(page.getByRole('dialog').getByRole('note')).toHaveCount(2);
  await page.getByRole('dialog').getByRole('button', { name: 'Wait with it' }).click();
  await expect(state(page)).toHaveText('nothing is on yet');

  await air(page, job, 2, 20, 50);
  await expect(page.getByText('Begin with “Converter”.')).toBeVisible();
  await expect(page.getByText(/not in this air/)).toHaveCount(0);
  await button.click();
  await expect(state(page)).toHaveText('too soon');
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

test('a plan that is not begun yet is there again after a reload, and gone once it is begun', async ({ page }) => {
  await goTo(page, '#/numbers/coats');
  await page.getByRole('button', { name: /^Start from/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Rust spot on the frame' }).click();
  await page.getByLabel('On what').fill(TITLE);
  await expect(page.locator('ol li')).toHaveCount(3);
  await page.locator('ol button').last().click();
  await page.getByRole('dialog').getByLabel('What it is called').fill('Last rust paint');
  await press(page, 'Keep it');
  await expect(page.locator('ol li').last()).toContainText('Last rust paint');
  await page.reload();
  await settled(page);
  await expect(page.getByLabel('On what')).toHaveValue(TITLE);
  await expect(page.getByRole('button', { name: /^Start from/ })).toContainText('Rust spot on the frame');
  await expect(page.locator('ol li')).toHaveCount(3);
  await expect(page.locator('ol li').last()).toContainText('Last rust paint');

  await press(page, 'Take these coats');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(TITLE);
  await goTo(page, '#/numbers/coats');
  await expect(page.locator('ol li').first()).toBeVisible();
  await expect(page.getByLabel('On what')).not.toHaveValue(TITLE);

  // What another version may have left there is not tripped over.
  await page.evaluate(() => localStorage.setItem('layshaft.draft.coats', '{"plan":{"title":7}}'));
  await page.reload();
  await settled(page);
  await expect(page.locator('ol li').first()).toBeVisible();
});

test('the alarms come as a calendar file with the right moments', async ({ page }) => {
  await begin(page);
  await press(page, '“Converter” goes on now');
  await expect(state(page)).toHaveText('too soon');
  await goTo(page, '#/today');
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Save alarms for the calendar')]);
  expect(download.suggestedFilename()).toBe('layshaft-alarms.ics');
  const file = (await readFile(await download.path(), 'utf8')).replaceAll('\r\n ', '');
  expect(file.startsWith('BEGIN:VCALENDAR\r\n')).toBe(true);
  const events = file.split('BEGIN:VEVENT').slice(1);
  const start = (what: string) => {
    const event = events.find((each) => each.includes(`SUMMARY:${TITLE.replace(',', '\\,')}: ${what}`));
    expect(event, what).toContain('BEGIN:VALARM');
    const [, year, month, day, hour, minute, second] = /DTSTART:(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z/.exec(event ?? '') ?? [];
    return Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute), Number(second));
  };
  // The file knows whole seconds, rounded up.
  for (const [what, hours] of [['may be recoated', CONVERTER.from], ['recoat window closes', CONVERTER.until]] as const) {
    const late = start(what) - reaches(START, hours).getTime();
    expect(late, `${what}, milliseconds after it is due`).toBeGreaterThan(-1000);
    expect(late, `${what}, milliseconds after it is due`).toBeLessThan(2000);
  }
  await expect(page.getByText(/alarms? in layshaft-alarms\.ics/)).toBeVisible();
});

test('what came about while the app was closed stands at the top of Today until it is seen', async ({ page }) => {
  const job = await begin(page);
  await press(page, '“Converter” goes on now');
  await goTo(page, '#/today');
  const missed = page.locator('section', { has: page.getByRole('heading', { name: 'While you were away' }) });
  await expect(missed).toHaveCount(0);

  const later = after(reaches(START, CONVERTER.from), 1);
  await away(page, later);
  await expect(missed).toContainText(TITLE);
  await expect(missed).toContainText(`${said(reaches(START, CONVERTER.from))} · Rust converter: may be recoated from now on.`);
  await expect(missed.locator('.row').filter({ hasText: 'touch' }).first(), 'the dry touch came about too').toBeVisible();

  // Not seen yet: it stands there again, together with what came since.
  const latest = after(reaches(START, CONVERTER.until), 1);
  await away(page, latest);
  await expect(missed).toContainText('may be recoated from now on');
  await expect(missed).toContainText(`${said(reaches(START, CONVERTER.until))} · Rust converter: recoat window closed`);
  await missed.getByRole('button', { name: 'Seen' }).click();
  await expect(missed).toHaveCount(0);
  await page.reload();
  await settled(page);
  await expect(missed).toHaveCount(0);

  // The parcel of the fifth day is late to nobody who was away only a minute.
  await away(page, after(latest, 1 / 60));
  await expect(missed).toHaveCount(0);
  await goTo(page, job);
  await expect(state(page)).toHaveText('sand first');
});

test('a parcel that was due while nobody looked is said', async ({ page }) => {
  await goTo(page, '#/today');
  await away(page, after(START, 6 * 24));
  const missed = page.locator('section', { has: page.getByRole('heading', { name: 'While you were away' }) });
  await expect(missed).toContainText(/Tue 24 Mar, 08:00 · .*expected/i);
});

test('the first Today after time away is asked for once, before the pages are there', async ({ page }) => {
  await goTo(page, '#/today');
  await page.addInitScript(() => {
    const asked: string[] = [];
    Object.assign(window, { asked });
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: unknown[]) {
      const { json = '' } = message as { json?: string };
      if (json.includes('minutesAtHand')) asked.push(json);
      return Reflect.apply(post, this, [message, ...rest]);
    };
  });
  await away(page, after(START, 6 * 24));
  await expect(page.getByRole('heading', { name: 'While you were away' })).toBeVisible();
  const asked = await page.evaluate(() => (window as unknown as { asked: string[] }).asked);
  expect(asked).toHaveLength(1);
  expect(asked[0]).toContain(`"lastSeenMs":${START.getTime()}`);
});

test('where a part stands moves its window, and a place without a temperature is refused at its field', async ({ page }) => {
  const job = await begin(page);
  await press(page, '“Converter” goes on now');
  await press(page, 'It stands: in the garage');
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('radio', { name: 'Under a heat lamp' }).check();
  await sheet.getByRole('button', { name: 'Note it' }).click();
  await expect(sheet.getByRole('alert')).toContainText('measure it on the surface');
  await sheet.getByRole('radio', { name: 'In the house' }).check();
  await sheet.getByRole('button', { name: /^Temperature there/ }).click();
  await typeOnPad(page, '20');
  await sheet.getByRole('button', { name: 'Note it' }).click();
  await expect(sheet).toHaveCount(0);
  await goTo(page, job);
  await expect(page.getByRole('button', { name: 'It stands: in the house' })).toBeVisible();
  await expect(coat(page, 'First rust paint')).toContainText(`from ${said(after(START, CONVERTER.from))}`);
});

test('a second temperature of the can runs the clock; half of it is refused at its field', async ({ page }) => {
  await goTo(page, '#/numbers/cure');
  await page.getByRole('button', { name: /^Product/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: /^Colour, spray can/ }).click();
  await expect(page.getByRole('term').filter({ hasText: 'On the can' }).locator('..')).toContainText(/7\sdays/);
  await press(page, 'Change the data');
  const sheet = page.getByRole('dialog').first();
  await expect(sheet.getByRole('button', { name: /^Full cure after/ })).toContainText(/168\sh/);
  await sheet.getByRole('button', { name: /^Second temperature/ }).click();
  await typeOnPad(page, '30');
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(sheet.locator('.field', { hasText: 'Takes there' }).getByRole('alert')).toBeVisible();
  await sheet.getByRole('button', { name: /^Takes there/ }).click();
  await typeOnPad(page, '84');
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(sheet).toHaveCount(0);
  await settled(page);
  await press(page, 'Working');
  // Half the time at 30 °C: ln(168 / 84) / (1/293.15 - 1/303.15) kelvin.
  const kelvin = Math.log(168 / 84) / (1 / 293.15 - 1 / 303.15);
  await expect(page.getByRole('dialog')).toContainText(`${kelvin.toFixed(0).replace(/(?=\d{3}$)/, ' ')} K from the two temperatures`);
});

test('measured surfaces make the area, on the mixing page and in a plan of coats', async ({ page }) => {
  await goTo(page, '#/numbers/mixing?mix=cover&surfaces=shell:480:620:1,rim:460:110:2');
  // 0.48 x 0.62 + 2 x pi x 0.46 x 0.11 square metres.
  const squareMetres = (0.48 * 0.62 + 2 * Math.PI * 0.46 * 0.11).toFixed(3);
  await expect(page.locator('main dl').last()).toContainText(`${squareMetres} m²`);
  await expect(page.getByRole('button', { name: /^Area/ })).toHaveCount(0);
  await page.getByRole('button', { name: /^Rim/ }).click();
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('button', { name: /^Diameter/ }).click();
  await typeOnPad(page, '2000');
  await sheet.getByRole('button', { name: 'Keep it' }).click();
  await expect(sheet.getByRole('alert')).toContainText('1 to 1 000 mm');
  await sheet.getByRole('button', { name: 'Leave it out' }).click();
  await expect(page.locator('main dl').last()).toContainText('0.298 m²');

  await goTo(page, '#/numbers/coats');
  await press(page, 'Add a surface');
  await page.getByRole('dialog').getByRole('button', { name: 'Keep it' }).click();
  await settled(page);
  await expect(page.locator('dl', { hasText: 'Area' })).toContainText('0.298 m²');
});

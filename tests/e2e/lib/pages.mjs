// Every page of the app on the demo bike: a name, its address (or how to find it), and what is opened on it first.
import { clockOf } from './clock.mjs';
import { damage } from './damage.mjs';
import { firstLink, goTo, press, settled, typeOnPad } from './steps.mjs';

const HOUR_MS = 3_600_000;
const GEARING = '#/numbers/gearing?front=16&rear=38';
const GOAL = '#/numbers/sprockets?goal=speedAtRpm&roadSpeedKmh=90&engineRpm=6500';
const WORN = '#/numbers/chain?pitches=20&measuredMm=262.5';
const THRUST = '#/numbers/thrust?frontTeeth=16&rearTeeth=38&headWindKmh=20&gradePercent=2';
const BRAKES = '#/numbers/brakes?end=front&masterMm=14&pistons=2&pistonMm=27';
const SCREW = '#/numbers/threads?diameterMm=9.9&pitchMm=1.25&propertyClass=8.8&tappedInto=castAluminium&engagementMm=12';

/** @type {[string, string | ((page: import('@playwright/test').Page) => Promise<string>), ((page: import('@playwright/test').Page) => Promise<void>)?][]} */
export const PAGES = [
  ['today', '#/today'],
  ['today-evening', '#/today', (page) => page.getByRole('radio', { name: 'Evening' }).check()],
  ['today-away', '#/today', (page) => comeBackAfter(page, 48)],
  ['plan-calendar', '#/plan'],
  ['plan-four-weeks', '#/plan?view=calendar&days=28'],
  ['plan-stages', '#/plan?view=stages'],
  ['plan-sure', '#/plan?view=sure'],
  ['plan-supposed', '#/plan?view=sure', supposeTwo],
  ['plan-order-first', '#/plan?view=sure', (page) => page.getByRole('heading', { name: 'Order first' }).scrollIntoViewIfNeeded()],
  ['plan-add', '#/plan', (page) => press(page, 'Add a job')],
  ['ready-made', '#/plan/ready-made'],
  ['ready-made-one', '#/plan/ready-made', (page) => page.getByRole('button', { name: /^Chain and sprockets/ }).click()],
  ['ready-made-package', '#/plan/ready-made', (page) => page.getByRole('button', { name: /^Stood for years/ }).click()],
  ['job', (page) => firstLink(page, '#/plan?view=stages', 'a.row[href^="#/plan/job/"]')],
  ['job-edit', async (page) => `${await firstLink(page, '#/plan?view=stages', 'a.row[href^="#/plan/job/"]')}/edit`],
  ['job-new', '#/plan/new'],
  ['job-tools', (page) => firstLink(page, '#/plan?view=stages', 'a.row:has-text("Paint")'), (page) => page.getByRole('heading', { name: 'Lay out before you begin' }).scrollIntoViewIfNeeded()],
  ['job-new-needs', '#/plan/new', (page) => page.getByRole('heading', { name: 'When it can be done' }).scrollIntoViewIfNeeded()],
  ['job-new-spots', '#/plan/new', (page) => page.getByRole('heading', { name: 'Air it needs' }).scrollIntoViewIfNeeded()],
  ['job-new-step', '#/plan/new', (page) => press(page, 'Add a step')],
  ['bench', (page) => firstLink(page, '#/today', 'a[href^="#/bench/"]')],
  ['finish', '#/today', (page) => page.getByRole('button', { name: /^It is done/ }).first().click()],
  ['finish-job', '#/plan/job/tank-primer', (page) => page.getByRole('button', { name: /^It is done/ }).click()],
  ['numbers', '#/numbers'],
  ['handbook', '#/numbers/handbook'],
  ['handbook-open', '#/numbers/handbook', openFormula],
  ['gearing', GEARING],
  ['gearing-ripple', GEARING, (page) => press(page, 'Try on the bike')],
  ['gearing-working', GEARING, (page) => press(page, 'Working')],
  ['gearing-pad', GEARING, (page) => page.getByRole('button', { name: /^Wheel sprocket: .* Type/ }).click()],
  ['gearing-refused', '#/numbers/gearing?front=16&rear=200'],
  ['gearing-corrector', GEARING, (page) => page.getByRole('heading', { name: 'Corrector for the speedometer' }).scrollIntoViewIfNeeded()],
  ['sprockets', '#/numbers/sprockets'],
  ['sprockets-goal', GOAL],
  ['sprockets-taller', '#/numbers/sprockets?goal=taller&tallerPercent=8&order=room&shown=all'],
  ['sprockets-speedometer', '#/numbers/sprockets?goal=speedometer'],
  ['sprockets-pair', GOAL, (page) => page.locator('ol button').first().click()],
  ['sprockets-ripple', GOAL, tryPair],
  ['sprockets-working', GOAL, (page) => press(page, 'Working')],
  ['sprockets-refused', '#/numbers/sprockets?goal=taller&tallerPercent=500'],
  ['chain', '#/numbers/chain'],
  ['chain-between', '#/numbers/chain?pitches=20&measuredMm=260.4&slackMm=18,22,16,20'],
  ['chain-worn', `${WORN}&chainWearLimitPercent=1&slackMm=12,19,28,30,24`],
  ['chain-slack', `${WORN}&slackMm=12,19,28,30,24`, (page) => page.getByRole('heading', { name: 'Slack round the chain' }).scrollIntoViewIfNeeded()],
  ['chain-working', WORN, (page) => press(page, 'Working')],
  ['chain-refused', '#/numbers/chain?pitches=20&measuredMm=300'],
  ['thrust', '#/numbers/thrust'],
  ['thrust-tried', THRUST],
  ['thrust-tables', THRUST, (page) => page.getByRole('heading', { name: 'Cruising in top' }).scrollIntoViewIfNeeded()],
  ['thrust-none', '#/numbers/thrust?gradePercent=40&loadKg=300'],
  ['thrust-downhill', '#/numbers/thrust?gradePercent=-8&headWindKmh=-20'],
  ['thrust-ripple', THRUST, (page) => press(page, 'Try on the bike')],
  ['thrust-working', THRUST, (page) => press(page, 'Working')],
  ['thrust-refused', '#/numbers/thrust?dragAreaM2=9'],
  ['load', '#/numbers/load'],
  ['load-consumer', '#/numbers/load', (page) => page.locator('button.row').first().click()],
  ['brakes', BRAKES],
  ['brakes-known', `${BRAKES}&leverRatio=6&leverNewtons=80`],
  ['brakes-ripple', BRAKES, (page) => press(page, 'Try on the bike')],
  ['brakes-pad', BRAKES, (page) => page.getByRole('button', { name: /^Master cylinder, bore/ }).click()],
  ['brakes-bleeding', `${BRAKES}&hoseMm=900`, (page) => press(page, 'Bleeding')],
  ['brakes-working', BRAKES, (page) => press(page, 'Working')],
  ['brakes-never-mix', `${BRAKES}&fluid=dot4&pourIn=dot5&fluidYears=6`],
  ['brakes-refused', '#/numbers/brakes?masterMm=0'],
  ['brakes-drum', '#/numbers/brakes?end=rear&camArmMm=70&camDegrees=60&rodTravelMm=25'],
  ['brakes-drum-open', '#/numbers/brakes?end=rear'],
  ['numbers-together', BRAKES, tryTogether],
  ['threads', '#/numbers/threads'],
  ['threads-found', SCREW],
  ['threads-maker', `${SCREW}&torqueNm=28&source=Workshop+manual%2C+page+12&place=brake`],
  ['threads-refused', '#/numbers/threads?way=count&diameterMm=9.9&turns=0&overMm=12.5'],
  ['filling', '#/numbers/filling'],
  ['filling-cups', '#/numbers/filling?litres=2.6', pickCups],
  ['mixing', '#/numbers/mixing'],
  ['mixing-two-part', '#/numbers/mixing?mix=twoPart'],
  ['mixing-thinner', '#/numbers/mixing?mix=thinning'],
  ['mixing-area', '#/numbers/mixing?mix=cover'],
  ['mixing-surfaces', '#/numbers/mixing?mix=cover&film=true&surfaces=shell:480:620:1,rim:460:110:2,tube:30:500:2'],
  ['mixing-surface', '#/numbers/mixing?mix=cover', (page) => press(page, 'Add a surface')],
  ['tyres', '#/numbers/tyres'],
  ['tyres-other', '#/numbers/tyres?end=rear&tyre=3.50-18+56P&dateCode=324'],
  ['tyres-refused', '#/numbers/tyres?tyre=three-18'],
  ['faults', '#/numbers/faults'],
  ['fault-question', '#/numbers/faults', startSearch],
  ['fault-answered', '#/numbers/faults', (page) => startSearch(page).then(() => page.locator('button.choice').last().click())],
  ['circuits', '#/numbers/circuits'],
  ['circuits-indicators', '#/numbers/circuits?circuit=indicators-one-pilot&set=key:on'],
  ['circuits-element', '#/numbers/circuits', pickWire],
  ['circuits-whole', '#/numbers/circuits?circuit=whole'],
  ['circuits-fault', '#/numbers/circuits?fault=3', (page) => page.getByText('Try a fault').scrollIntoViewIfNeeded()],
  ['lamps', '#/numbers/lamps'],
  ['lamps-led', '#/numbers/lamps', tryLed],
  ['lamps-cures', '#/numbers/lamps', (page) => tryLed(page).then(() => page.getByRole('heading', { name: 'Tried, with an electronic flasher' }).scrollIntoViewIfNeeded())],
  ['lamps-counted', '#/numbers/lamps?flashes=20&seconds=15', (page) => page.getByRole('heading', { name: 'Count it' }).scrollIntoViewIfNeeded()],
  ['charging', '#/numbers/charging'],
  ['charging-weak', '#/numbers/charging?restedVolts=12.2&idleVolts=12.4&fastVolts=13.1&drainMilliamperes=40'],
  ['wire', '#/numbers/wire'],
  ['wire-too-thin', '#/numbers/wire?amperes=9&outMetres=3&sectionMm2=0.75'],
  ['cure', '#/numbers/cure'],
  ['cure-data', '#/numbers/cure', (page) => press(page, 'Change the data')],
  ['cure-start', '#/numbers/cure', (page) => press(page, 'Start the clock')],
  ['cure-start-earlier', '#/numbers/cure', async (page) => { await press(page, 'Start the clock'); await page.getByRole('radio', { name: 'Earlier' }).check(); }],
  ['cure-clock', (page) => firstLink(page, '#/today', 'a[href^="#/numbers/cure/"]')],
  ['cure-place', (page) => firstLink(page, '#/today', 'a[href^="#/numbers/cure/"]'), (page) => page.getByRole('button', { name: /^It stands/ }).click()],
  ['coats-plan', '#/numbers/coats'],
  ['coats-plan-foot', '#/numbers/coats', (page) => page.getByRole('heading', { name: 'How much paint' }).scrollIntoViewIfNeeded()],
  ['coats-plan-coat', '#/numbers/coats', (page) => page.locator('ol button.row').nth(1).click()],
  ['coats-of-job', (page) => addPanelPaint(page, (job) => `#/numbers/coats/of/${job}`)],
  ['job-coats', (page) => addPanelPaint(page, (job) => `#/plan/job/${job}`)],
  ['coats-plan-refused', '#/numbers/coats', (page) => page.getByLabel('On what').fill('')],
  ['coats-ready', (page) => startCoats(page, [])],
  ['coats-too-soon', (page) => startCoats(page, [0])],
  ['coats-open', (page) => startCoats(page, [5])],
  ['coats-sand-first', (page) => startCoats(page, [80])],
  ['coats-all-on', (page) => startCoats(page, [25, 20, 15, 10, 5])],
  ['coats-lay', (page) => startCoats(page, [0]), (page) => press(page, 'It is on already')],
  ['coats-today', '#/today', (page) => page.getByRole('heading', { name: 'Curing' }).scrollIntoViewIfNeeded()],
  ['inspect', '#/inspect'],
  ['inspect-area', '#/inspect', (page) => page.locator('button.row').first().click()],
  ['inspect-item', (page) => firstLink(page, '#/inspect', 'a[href*="/item/"]')],
  ['inspect-reading', readingItem],
  ['inspect-measured', readingItem, measure],
  ['inspect-summary', (page) => firstLink(page, '#/inspect', 'a[href$="/summary"]')],
  ['inspect-day-sheet', (page) => firstLink(page, '#/inspect', 'a[href$="/day-sheet"]')],
  ['bike', '#/bike'],
  ['bike-who', '#/bike/who'],
  ['bike-spec', '#/bike/spec'],
  ['bike-spec-form', '#/bike/spec/fitted/drive'],
  ['bike-spec-brake', '#/bike/spec/fitted/front-brake'],
  ['bike-consumer', (page) => firstLink(page, '#/bike/spec', 'a[href^="#/bike/slot/fitted/consumer/"]')],
  ['bike-filling', (page) => firstLink(page, '#/bike/spec', 'a[href^="#/bike/slot/fitted/fluid/"]')],
  ['bike-parts', '#/bike/parts'],
  ['bike-part-delivery', '#/bike/parts/new', (page) => page.getByRole('radio', { name: 'May be far longer' }).check()],
  ['bike-part-new', '#/bike/parts/new'],
  ['bike-torques', '#/bike/torques'],
  ['bike-torque-new', '#/bike/torques/new'],
  ['bike-garage', '#/bike/garage'],
  ['bike-hours', '#/bike/hours'],
  ['bike-hours-more', '#/bike/hours', (page) => page.getByRole('heading', { name: 'Quiet hours' }).scrollIntoViewIfNeeded()],
  ['bike-shelf', '#/bike/shelf'],
  ['bike-put-away', '#/bike/away', putOneAway],
  ['bike-bundle', '#/bike/bundle'],
  ['home-screen', '#/bike/home-screen'],
  ['bike-device', '#/bike/device'],
  ['bike-history', '#/bike/history/drive/standard%2Fdrive'],
  ['bike-rivals', '#/bike/rivals'],
  ['start', '#/start'],
  ['start-own', '#/start/own'],
  ['start-kind', '#/start/own?step=kind'],
  ['start-work', '#/start/own?step=work'],
  ['start-hours', '#/start/own?step=hours', (page) => page.getByRole('radio', { name: 'Saturdays', exact: true }).check()],
  ['start-inspection', '#/start/own?step=inspection'],
  ['nowhere', '#/no/such/page'],
  // The last ones: after them the demo bike is gone.
  ['bike-device-damaged', setAside],
  ['start-damaged', '#/bike/device', (page) => page.evaluate(() => (location.hash = '#/today')).then(() => page.getByText('A damaged file was set aside').waitFor())],
];

/**
 * Goes to a page of the list and opens what belongs to it.
 * @param {import('@playwright/test').Page} page
 * @param {typeof PAGES[number]} entry
 */
export async function show(page, [, where, act]) {
  await goTo(page, typeof where === 'function' ? await where(page) : where);
  await act?.(page);
}

/** The first item that is measured; which one it is depends on the pack. */
export async function readingItem(page) {
  let next = await firstLink(page, '#/inspect', 'a[href*="/item/"]');
  while (next?.includes('/item/')) {
    await goTo(page, next);
    if (await page.getByRole('button', { name: /^Type it/ }).count()) return next;
    next = await page.getByRole('link', { name: /^(Next|Summary)$/ }).getAttribute('href');
  }
  throw new Error('no item of the pack is measured');
}

async function measure(page) {
  await page.getByRole('button', { name: /^Type it/ }).click();
  await typeOnPad(page, '3');
  await page.getByRole('button', { name: 'Close' }).click();
}

/** The first pair of the list that is not on the bike, seen in ripple. */
async function tryPair(page) {
  await page.locator('ol button:not(.fitted)').first().click();
  await press(page.getByRole('dialog'), 'Try on the bike');
}

/** Two cups at hand, whatever was ticked before. */
async function pickCups(page) {
  await page.getByRole('button', { name: /^Cups that you own/ }).click();
  const sheet = page.getByRole('dialog');
  for (const cup of ['1 L', '250 mL']) {
    const box = sheet.getByRole('checkbox', { name: cup, exact: true });
    if ((await box.getAttribute('aria-checked')) !== 'true') await box.click();
  }
  await sheet.getByRole('button', { name: 'Done' }).click();
}

/** Sets sprockets and a brake beside each other and looks at what they do together. */
async function tryTogether(page) {
  for (const address of [BRAKES, GEARING]) {
    await goTo(page, address);
    await press(page, 'Try on the bike');
    await press(page, 'Try more changes with it');
    await page.locator('.toast').getByRole('button').last().click();
  }
  await goTo(page, '#/numbers');
  await page.getByRole('button', { name: /^Tried together/ }).click();
}

/** Tries LED indicators of 1.5 W. */
export async function tryLed(page) {
  await page.getByRole('button', { name: /^Lamp/ }).click();
  const sheet = page.getByRole('dialog').first();
  await sheet.getByRole('button', { name: /^Power of one/ }).click();
  await typeOnPad(page, '1.5');
  await sheet.getByRole('button', { name: /^Kind/ }).click();
  await page.getByRole('dialog').last().getByRole('button', { name: 'LED' }).click();
  await sheet.getByRole('button', { name: 'Work it out' }).click();
}

/** Puts a job away, unless that was done before, and looks at the list. */
async function putOneAway(page) {
  if ((await page.getByRole('heading', { level: 2 }).count()) > 0) return;
  await goTo(page, '#/plan/job/photos');
  await press(page, 'Put it away');
  // The page goes up to the plan by itself once the job is put away.
  await page.locator('main[data-page="plan"]').waitFor();
  await goTo(page, '#/bike/away');
}

/** Looks for a formula and opens it. */
async function openFormula(page) {
  await page.getByLabel('Search').fill('torque preload');
  await page.getByText('Preload and torque of a screw').click();
}

/** Supposes two things together. */
async function supposeTwo(page) {
  await page.getByRole('checkbox', { name: /^Never on Tuesday/ }).click();
  await page.getByRole('checkbox', { name: /colder/ }).click();
  await page.getByText('Supposed together').scrollIntoViewIfNeeded();
}

/** Begins the first search that is offered. */
async function startSearch(page) {
  await page.locator('button.row').first().click();
  await page.locator('button.choice').first().waitFor();
}

/** Opens a wire of the circuit from the list of its parts. */
export async function pickWire(page) {
  await page.getByRole('button', { name: /^List all/ }).click();
  await page.locator('button.row', { hasText: /feed|lead|wire|Line/ }).first().click();
}

/** Begins a paint job on a side panel, with its coats put on so many hours ago, and gives the address of its page. */
export async function startCoats(page, hoursAgo) {
  const nowMs = await clockOf(page);
  const laidMs = hoursAgo.map((hours) => nowMs - hours * HOUR_MS);
  return page.evaluate(async (laidMs) => {
    const { processes } = await window.layshaft.ask({ kind: 'products' });
    const process = processes.find((each) => each.part === 'sidePanel');
    const { made } = await window.layshaft.act({ kind: 'startProcess', process });
    for (const appliedMs of laidMs) await window.layshaft.act({ kind: 'layCoat', process: made, appliedMs, anyway: true });
    return `#/numbers/coats/${made}`;
  }, laidMs);
}

/** Puts the painting of panels into the plan, with its coats, and gives an address of that job. */
export async function addPanelPaint(page, addressOf) {
  const made = await page.evaluate(async () => (await window.layshaft.act({ kind: 'addReadyMade', readyMade: 'panel-paint' })).made);
  return addressOf(made);
}

/** Opens the app as after some hours in which nobody looked at it. */
export async function comeBackAfter(page, hours) {
  // On leaving, the app notes the moment; so the moment is set when it opens anew.
  await page.addInitScript(() => {
    const seen = sessionStorage.getItem('seen-before');
    if (seen) localStorage.setItem('layshaft.seen', seen);
    sessionStorage.removeItem('seen-before');
  });
  const seenMs = (await clockOf(page)) - hours * HOUR_MS;
  await page.evaluate((seen) => sessionStorage.setItem('seen-before', seen), String(seenMs));
  await page.reload();
  await settled(page);
}

/** Opens the app on a damaged database: it is set aside and said so. */
async function setAside(page) {
  await damage(page);
  await page.goto('./#/bike/device');
  await settled(page);
  return '#/bike/device';
}

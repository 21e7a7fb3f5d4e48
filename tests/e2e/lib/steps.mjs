// What a person does, in one line each. Nothing here waits for time to pass: each step waits for what the page shows.

/** Opens an address inside the app and waits until its page stands. It comes from an empty page, so that nothing is left open. */
export async function goTo(page, hash) {
  for (const next of ['#/nowhere', hash]) {
    await page.evaluate((to) => (location.hash = to), next);
    const path = next.replace('#/', '').split('?')[0].split('/').map(decodeURIComponent).join('/');
    await page.locator(`main[data-page="${path}"]`).waitFor();
  }
  await settled(page);
}

/** The page has asked for what it shows: its title stands there and no answer is under way. */
export async function settled(page) {
  await page.locator('#page-title').first().waitFor();
  // Two frames: a page that has just been put up asks in the first of them.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  await page.waitForFunction(() => document.documentElement.dataset.asking === '0');
}

export async function loadDemo(page) {
  await page.getByRole('button', { name: /demo bike/ }).click();
  await page.waitForFunction(() => location.hash === '#/today');
  await settled(page);
  await page.getByRole('button', { name: 'Close' }).click();
}

/** Presses a button or link by its words. */
export async function press(page, name) {
  await page.getByRole('button', { name, exact: true }).or(page.getByRole('link', { name, exact: true })).first().click();
}

/** The address of the first link of its kind on a page. */
export async function firstLink(page, hash, selector) {
  await goTo(page, hash);
  return page.locator(selector).first().getAttribute('href');
}

/** Types a number on the pad that is open, and enters it. */
export async function typeOnPad(page, text) {
  // It may lie over another sheet.
  const pad = page.getByRole('dialog').filter({ has: page.getByRole('button', { name: 'Enter', exact: true }) }).last();
  await pad.getByRole('button', { name: 'Clear' }).click();
  for (const key of text) {
    const name = { '.': 'decimal point', '-': 'Plus or minus' }[key] ?? key;
    await pad.getByRole('button', { name, exact: true }).click();
  }
  await pad.getByRole('button', { name: 'Enter', exact: true }).click();
  await pad.waitFor({ state: 'detached' });
}

// Without a network after the first visit, across reloads; a newer version is offered, not forced.
import { fileURLToPath } from 'node:url';
import { serve } from './lib/serve.mjs';
import { goTo, loadDemo, settled } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

const DIST = fileURLToPath(new URL('../../mobile-shell/ui/dist/', import.meta.url));

test('after the first visit everything works offline, also a reload and an address typed in', async ({ page, context }) => {
  await openDemo(page);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await context.setOffline(true);
  await page.reload();
  await settled(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Today');
  await page.goto('./#/numbers/gearing?front=16&rear=38');
  await settled(page);
  await expect(page.getByText('engine turns slower at the same speed')).toBeVisible();
  await goTo(page, '#/bike/garage');
  await page.getByRole('button', { name: 'Note it' }).click();
  await expect(page.getByText(/is noted/)).toBeVisible();
});

test('what was entered survives a reload and a killed page', async ({ page, context }) => {
  await openDemo(page);
  await goTo(page, '#/bike/who');
  await page.getByLabel('Frame number').fill('ORT175-009999');
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByText('Name and papers are kept.')).toBeVisible();
  await page.close({ runBeforeUnload: false });
  const again = await context.newPage();
  await again.goto('./#/bike');
  await settled(again);
  await expect(again.getByText(/ORT175-009999/)).toBeVisible();
});

test('the app can be installed: manifest, icons and start address are there', async ({ page, request }) => {
  await page.goto('./');
  const link = await page.locator('link[rel="manifest"]').getAttribute('href');
  const address = new URL(link ?? '', page.url());
  const manifest = await (await request.get(address.href)).json();
  expect(manifest.name).toBe('Layshaft');
  expect(manifest.display).toBe('standalone');
  expect(manifest.icons.some((icon: { purpose?: string }) => icon.purpose === 'maskable')).toBe(true);
  for (const picture of [...manifest.icons, ...manifest.screenshots]) {
    const answer = await request.get(new URL(picture.src, address).href);
    expect(answer.ok(), picture.src).toBe(true);
    if (!picture.src.endsWith('.png')) continue;
    // The size of a PNG stands in its header (ISO/IEC 15948, 11.2.2).
    const bytes = await answer.body();
    expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`, picture.src).toBe(picture.sizes);
  }
});

test('a newer version is offered and taken only when asked for', async ({ page }) => {
  // A server of our own, because what it serves changes while the app is open.
  let version = '';
  const server = await serve(DIST, (path, body) => (path.endsWith('sw.js') ? body + version : body));
  try {
    await page.goto(server.address);
    await loadDemo(page);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await expect(page.getByText('A newer version is ready.')).toHaveCount(0);
    version = '\n// A later build.\n';
    await page.evaluate(async () => {
      await (await navigator.serviceWorker.getRegistration())?.update();
    });
    const offer = page.getByText('A newer version is ready.');
    await expect(offer).toBeVisible();
    // Nobody is interrupted in a form that is half filled in.
    await goTo(page, '#/bike/who');
    await expect(offer).toBeVisible();
    await page.getByLabel('Name of the bike').fill('Another name');
    await expect(offer).toHaveCount(0);
    await goTo(page, '#/today');
    await expect(offer).toBeVisible();
    const reloaded = page.waitForEvent('load');
    await page.getByRole('button', { name: 'Take it now' }).click();
    await reloaded;
    await settled(page);
    await expect(page.getByText('A newer version is ready.')).toHaveCount(0);
  } finally {
    server.close();
  }
});

// A database that cannot be read is set aside, never deleted, and the person is told and can take the file out; a bundle
// brings the bike back.
import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { receive, saveBundle } from './lib/bundles.ts';
import { besideTheApp, damage } from './lib/damage.mjs';
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

/** Names and sizes of what the pool of the private file system holds. */
async function kept(page: Page): Promise<Record<string, number>> {
  await besideTheApp(page);
  return page.evaluate(async () => Object.fromEntries((await poolFiles()).map((file) => [file.name, file.bytes])));
}

/** Takes the damaged file out by the button on the page. */
async function takeOut(page: Page): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Save the damaged file')]);
  expect(download.suggestedFilename()).toBe('layshaft.sqlite.damaged-1');
  await expect(page.getByText('layshaft.sqlite.damaged-1 is saved.')).toBeVisible();
  return readFile(await download.path());
}

declare function poolFiles(): Promise<{ name: string; bytes: number; start: number; handle: FileSystemFileHandle }[]>;

test('a damaged database is set aside and said so, and a bundle brings the bike back', async ({ page }) => {
  await openDemo(page);
  const bundle = await saveBundle(page);
  await damage(page);
  const before = await kept(page);

  await page.goto('./');
  await expect(page.getByText('A damaged file was set aside')).toBeVisible();
  await expect(page.getByText('layshaft.sqlite.damaged-1')).toBeVisible();
  const taken = await takeOut(page);
  expect(taken.length, 'as many bytes as were there').toBe(before['layshaft.sqlite']);
  expect(taken.subarray(0, 4096).every((byte) => byte === 120), 'as it was damaged').toBe(true);
  expect(taken.includes('Orrin Tern 175'), 'what the rest holds is still in it').toBe(true);
  const after = await kept(page);
  expect(after['layshaft.sqlite.damaged-1'], 'not a byte less than was there').toBe(before['layshaft.sqlite']);

  // The next start still tells, and so does the device's own page once there is a bike again.
  await page.goto('./');
  await settled(page);
  expect((await takeOut(page)).equals(taken)).toBe(true);
  await goTo(page, '#/bike/bundle');
  await receive(page, 'bike.layshaft', bundle);
  await goTo(page, '#/bike');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Orrin Tern 175');
  await goTo(page, '#/bike/device');
  expect((await takeOut(page)).equals(taken)).toBe(true);
});

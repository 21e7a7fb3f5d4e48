// A database that cannot be read is set aside, never deleted, and the person is told and can take the file out; a bundle
// brings the bike back.
import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { receive, saveBundle } from './lib/bundles.ts';
import { goTo, press, settled } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

/** Goes to a page of the same site that holds no data, and damages the database: its first page is overwritten. */
async function damage(page: Page): Promise<void> {
  await page.goto('./icons/layshaft.svg');
  await expect(async () => {
    const done = await page.evaluate(async () => {
      for (const file of await poolFiles()) {
        if (file.name !== 'layshaft.sqlite') continue;
        const writing = await file.handle.createWritable({ keepExistingData: true });
        await writing.write({ type: 'write', position: file.start, data: new Uint8Array(4096).fill(120) });
        await writing.close();
        return true;
      }
      return false;
    });
    expect(done).toBe(true);
  }).toPass();
}

/** Names and sizes of what the pool of the private file system holds. */
async function kept(page: Page): Promise<Record<string, number>> {
  await page.goto('./icons/layshaft.svg');
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

/** The pool gives its files random names; each begins with a block of 4096 bytes that says which file it is. */
function addPoolFiles() {
  Object.assign(globalThis, {
    async poolFiles() {
      const start = 4096;
      const root = await navigator.storage.getDirectory();
      const pool = await (await root.getDirectoryHandle('layshaft')).getDirectoryHandle('.opaque');
      const found = [];
      for await (const handle of pool.values()) {
        if (handle.kind !== 'file') continue;
        const file = await handle.getFile();
        const name = new TextDecoder().decode(await file.slice(0, 512).arrayBuffer()).replace(/\0+$/, '');
        if (name) found.push({ name, bytes: file.size - start, start, handle });
      }
      return found;
    },
  });
}

test('a damaged database is set aside and said so, and a bundle brings the bike back', async ({ page, context }) => {
  // A bare picture asks for the mark of its site; there is none.
  await page.route('**/favicon.ico', (route) => route.fulfill({ status: 204 }));
  await context.addInitScript(addPoolFiles);
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

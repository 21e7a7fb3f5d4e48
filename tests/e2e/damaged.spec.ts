// A database that cannot be read is set aside, never deleted, and the person is told; a bundle brings the bike back.
import type { Page } from '@playwright/test';
import { receive, saveBundle } from './lib/bundles.ts';
import { goTo, settled } from './lib/steps.mjs';
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
  const after = await kept(page);
  expect(after['layshaft.sqlite.damaged-1'], 'not a byte less than was there').toBe(before['layshaft.sqlite']);

  await page.goto('./');
  await settled(page);
  await goTo(page, '#/bike/bundle');
  await receive(page, 'bike.layshaft', bundle);
  await goTo(page, '#/bike');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Orrin Tern 175');
});

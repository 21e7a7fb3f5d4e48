// Damages the database of the app in the browser's private file system, as a failing disk would.

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

/**
 * Goes to a page of the same site that holds no data; there `poolFiles` is at hand.
 * @param {import('@playwright/test').Page} page
 */
export async function besideTheApp(page) {
  // A bare picture asks for the mark of its site; there is none.
  await page.route('**/favicon.ico', (route) => route.fulfill({ status: 204 }));
  await page.goto('./icons/layshaft.svg');
  await page.evaluate(addPoolFiles);
}

/**
 * Overwrites the first page of the database.
 * @param {import('@playwright/test').Page} page
 */
export async function damage(page) {
  await besideTheApp(page);
  // The app that was left may hold the file for a moment longer.
  await page.waitForFunction(async () => {
    try {
      for (const file of await globalThis.poolFiles()) {
        if (file.name !== 'layshaft.sqlite') continue;
        const writing = await file.handle.createWritable({ keepExistingData: true });
        await writing.write({ type: 'write', position: file.start, data: new Uint8Array(4096).fill(120) });
        await writing.close();
        return true;
      }
    } catch {
      // Still held.
    }
    return false;
  });
}

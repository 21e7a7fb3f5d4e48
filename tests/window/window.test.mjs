// The desktop window, driven: the same pages as in the browser, over a native database, allowed nothing that they do
// not need.
import assert from 'node:assert/strict';
import { readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';

import { act, ask, invoke, inWindow, stage } from './stage.mjs';

const place = stage();

/** Where the program keeps its database. */
const dataFolder = () => join(place.home.home, '.local/share/org.layshaft.app');

test('the window opens on its own pages and puts nothing global in their reach', async () => {
  await inWindow(place, async (window) => {
    assert.match(await window.title(), /Layshaft/);
    assert.equal(await window.run('return location.origin;'), 'tauri://localhost');
    assert.equal(await window.run('return typeof window.__TAURI__;'), 'undefined');
    await window.waitFor(`document.querySelector('#app')?.childElementCount > 0`);
  });
});

test('what was done is there after the window was closed and opened again', async () => {
  await inWindow(place, async (window) => {
    assert.equal((await act(window, { kind: 'loadDemo' })).refused, undefined);
    const fitted = await act(window, { kind: 'fitSprockets', frontTeeth: 16, rearTeeth: 38 });
    assert.equal(fitted.refused, undefined);
  });
  assert.ok((await stat(join(dataFolder(), 'layshaft.sqlite'))).size > 0);
  await inWindow(place, async (window) => {
    const shelf = await ask(window, { kind: 'shelf' });
    assert.equal(shelf.bikes.length, 1);
    assert.equal(shelf.open, shelf.bikes[0].id);
    const bike = await ask(window, { kind: 'bike' });
    assert.match(JSON.stringify(bike), /"frontTeeth":16/);
  });
});

test('a refusal names the field and the range, and nothing is stored', async () => {
  await inWindow(place, async (window) => {
    await act(window, { kind: 'loadDemo' });
    const before = await ask(window, { kind: 'bike' });
    const { refused } = await act(window, { kind: 'fitSprockets', frontTeeth: 0, rearTeeth: 38 });
    assert.equal(refused.code, 'outOfRange');
    assert.match(refused.field, /front/i);
    assert.match(JSON.stringify(refused.message), /"name":"value","value":{"kind":"quantity","value":0(\.0)?,/);
    assert.deepEqual(await ask(window, { kind: 'bike' }), before);
  });
});

test('a call that is not understood is refused, not dropped', async () => {
  await inWindow(place, async (window) => {
    const { refused } = await invoke(window, 'ask', { envelope: '{"query":', language: 'en' });
    assert.equal(JSON.parse(refused).code, 'badRequest');
  });
});

test('the pages reach no network and no file that the person did not choose', async () => {
  await inWindow(place, async (window) => {
    const fetched = `return fetch('https://layshaft.invalid/').then(() => 'reached', (error) => error.name);`;
    assert.equal(await window.run(fetched), 'TypeError');
    const blocked = window.run(
      `return new Promise((resolve) => {
         document.addEventListener('securitypolicyviolation', (event) => resolve(event.effectiveDirective), { once: true });
         fetch('https://layshaft.invalid/').catch(() => {});
       });`,
    );
    assert.equal(await blocked, 'connect-src');
    await writeFile(join(place.home.home, 'private.txt'), 'not for the pages');
    const read = await invoke(window, 'plugin:fs|read_file', { path: join(place.home.home, 'private.txt') });
    assert.ok(read.refused, 'a file outside the file dialog was read');
    const write = window.run(
      `const headers = { path: encodeURIComponent(values[0]) };
       return window.__TAURI_INTERNALS__.invoke('plugin:fs|write_file', new Uint8Array([1]), { headers })
         .then(() => 'written', () => 'refused');`,
      join(place.home.home, 'private.txt'),
    );
    assert.equal(await write, 'refused');
    for (const command of ['plugin:fs|remove', 'plugin:fs|read_dir', 'plugin:window|set_title', 'plugin:event|emit']) {
      assert.ok((await invoke(window, command, { path: place.home.home })).refused, `${command} was allowed`);
    }
  });
});

test('a damaged database is set aside with every byte, and the window opens', async () => {
  await inWindow(place, (window) => act(window, { kind: 'loadDemo' }));
  const database = join(dataFolder(), 'layshaft.sqlite');
  const damaged = 'this was a database once '.repeat(400);
  // A write-ahead log that is still whole would mend the file, and rightly so.
  for (const tail of ['-wal', '-shm']) await rm(database + tail, { force: true });
  await writeFile(database, damaged);
  await inWindow(place, async (window) => {
    const shelf = await ask(window, { kind: 'shelf' });
    assert.deepEqual(shelf.bikes, []);
    assert.ok(shelf.setAside, 'the shelf does not say that a database was set aside');
  });
  const files = (await readdir(dataFolder())).filter((name) => name.includes('.sqlite'));
  const contents = await Promise.all(files.map((name) => readFile(join(dataFolder(), name), 'latin1')));
  assert.ok(contents.includes(damaged), `no file of ${files.join(', ')} holds the damaged database`);
});

// From first run to a bundle that brings everything back, by the buttons of the pages where the window is concerned: the
// file dialog is the system's own.
import assert from 'node:assert/strict';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';

import { act, ask, inWindow, stage } from './stage.mjs';
import { freshHome } from './webdriver.mjs';

const place = stage();

/** What must be the same on both devices. */
async function whatIsKnown(window) {
  const answers = await Promise.all(
    ['bike', 'gearing', 'load', 'inspection'].map((kind) => ask(window, { kind })),
  );
  answers.forEach((answer) => assert.equal(answer.refused, undefined));
  return answers;
}

test('a bundle saved through the file dialog brings everything to another device', async () => {
  const known = await inWindow(place, async (window) => {
    await window.press('/demo bike/');
    await window.waitFor(`location.hash === '#/today' && document.querySelector('#page-title')`);
    const fitted = await act(window, { kind: 'fitSprockets', frontTeeth: 16, rearTeeth: 38 });
    assert.equal(fitted.refused, undefined);
    await window.run(`location.hash = '#/bike/bundle';`);
    await window.press('/^Save a bundle$/');
    await place.screen.pressEnterIn('Save File');
    await window.waitFor(`document.querySelector('[role=status]')?.textContent.includes('.layshaft')`);
    return whatIsKnown(window);
  });
  const bundles = (await readdir(place.home.home)).filter((name) => name.includes('.layshaft'));
  assert.equal(bundles.length, 1, `one bundle, not ${bundles.join(', ')}`);
  const bytes = await readFile(join(place.home.home, bundles[0]));
  assert.equal(bytes.subarray(0, 15).toString(), 'SQLite format 3');

  const other = { screen: place.screen, home: await freshHome() };
  try {
    await inWindow(other, async (window) => {
      const bundle = bytes.toString('base64');
      const { received, refused } = await act(window, { kind: 'receiveBundle', bundle, asSecondBike: true });
      assert.equal(refused, undefined);
      assert.ok(received.changes > 100, `only ${received.changes} facts came in`);
      const shelf = await ask(window, { kind: 'shelf' });
      await act(window, { kind: 'openBike', bike: shelf.bikes[0].id });
      assert.deepEqual(await whatIsKnown(window), known);
    });
  } finally {
    await other.home.remove();
  }
});

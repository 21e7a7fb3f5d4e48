// Notices of cures: said by the program itself, by its own clock, over a message bus that only this test listens to.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';

import { clockOf } from './clock.mjs';
import { act, inWindow, stage } from './stage.mjs';
import { startBus } from './webdriver.mjs';

const HOUR_MS = 3_600_000;
/** How far ahead of now the coat of the test is cured. */
const SOON_MS = 6_000;

const place = stage();
before(async () => {
  place.bus = await startBus();
});
after(() => place.bus?.stop());

test('the end of a cure is announced when it comes, and not before', async () => {
  await inWindow(place, async (window) => {
    const nowMs = await clockOf(window);
    const moment = { nowMs, zone: { name: 'UTC', shifts: [] } };
    await act(window, { kind: 'startBike', identity: { name: 'Bench mate', invented: true } }, moment);
    await act(window, { kind: 'noteClimate', fromMs: nowMs - 2 * HOUR_MS, celsius: 20, humidity: 50 }, moment);
    const started = await act(
      window,
      {
        kind: 'startCure',
        title: 'Left side panel',
        appliedMs: nowMs - HOUR_MS + SOON_MS,
        product: { name: 'Quick lacquer', product: 'paint', fullCureHours: 1, atCelsius: 20, typical: false },
      },
      moment,
    );
    assert.equal(started.refused, undefined);
    await place.bus.hears(/Left side panel[\s\S]*fully cured/);
    assert.ok((await clockOf(window)) >= nowMs + SOON_MS, 'it was announced too early');
  });
});

// What every test of the window does: a screen, a fresh home, the window, and the two commands as the pages call them.
import assert from 'node:assert/strict';
import { randomUUID } from 'node:crypto';
import { after, afterEach, before, beforeEach } from 'node:test';

import { START_MS } from '../moment.mjs';
import { clockOf } from './clock.mjs';
import { freshHome, openWindow, startScreen } from './webdriver.mjs';

const app = process.env.LAYSHAFT_APP;
const HOUR_MS = 3_600_000;
/** The moment at which the program's own clock begins too. */
const SATURDAY = { nowMs: START_MS, zone: { name: 'UTC', shifts: [] } };

/** A screen for all tests of a file, and a home for each. */
export function stage() {
  const place = {};
  before(async () => {
    assert.ok(app, 'LAYSHAFT_APP must name the program; run this through `cargo xtask test --only window`');
    place.screen = await startScreen();
  });
  after(() => place.screen?.stop());
  beforeEach(async () => {
    place.home = await freshHome();
  });
  afterEach(() => place.home.remove());
  return place;
}

/** Opens the window, hands it over, and closes it whatever happens. */
export async function inWindow({ screen, home, bus }, use) {
  const window = await openWindow({ app, display: screen.display, home: home.home, bus: bus?.address });
  try {
    const sinceStart = (await clockOf(window)) - START_MS;
    assert.ok(sinceStart >= 0 && sinceStart < HOUR_MS, `the clock of the window is ${sinceStart} ms from its start`);
    return await use(window);
  } finally {
    await window.quit();
  }
}

/** Calls a command of the program as the pages do; a refusal comes back as `{ refused }`. */
export async function invoke(window, command, payload) {
  return window.run(
    `const [command, payload] = values; const invoke = window.__TAURI_INTERNALS__.invoke;
     return invoke(command, payload).then((answer) => ({ answer }), (refused) => ({ refused: String(refused) }));`,
    command,
    payload,
  );
}

export async function act(window, command, moment = SATURDAY) {
  const { answer, refused } = await invoke(window, 'act', {
    envelope: JSON.stringify({ id: randomUUID(), moment, command }),
    language: 'en',
  });
  return refused === undefined ? JSON.parse(answer) : { refused: JSON.parse(refused) };
}

export async function ask(window, query, moment = SATURDAY) {
  const { answer, refused } = await invoke(window, 'ask', { envelope: JSON.stringify({ moment, query }), language: 'en' });
  return refused === undefined ? JSON.parse(answer) : { refused: JSON.parse(refused) };
}

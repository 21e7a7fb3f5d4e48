// The one place that sets the clock of the window: the program, its web view and its driver run under libfaketime, so that the
// program needs no door for tests.
import { execFile } from 'node:child_process';
import { rm } from 'node:fs/promises';
import { promisify } from 'node:util';

import { START_MS, ZONE } from '../moment.mjs';

/** Runs a command and gives its words; no clock that this test itself may be run under reaches it. */
async function words(program, ...given) {
  const { stdout } = await promisify(execFile)(program, given, { env: { PATH: process.env.PATH } });
  return stdout.trim();
}

/** The variables under which programs read a clock that begins at the moment of the tests and runs on. */
export async function fixedClock() {
  const shift = Math.round(START_MS / 1000) - Number(await words('date', '+%s'));
  return {
    TZ: ZONE,
    // The command knows where its library lies.
    LD_PRELOAD: await words('faketime', '-f', '+0', 'printenv', 'LD_PRELOAD'),
    // A shift holds for every process alike; a moment would begin anew in each.
    FAKETIME: shift < 0 ? `${shift}` : `+${shift}`,
    // Time that is only measured stays as it is: the web view waits by it.
    FAKETIME_DONT_FAKE_MONOTONIC: '1',
  };
}

/** Removes what the clock keeps in memory for a process and those that it started: they were ended, and left it behind. */
export const forgetClock = ({ pid }) =>
  Promise.all([`faketime_shm_${pid}`, `sem.faketime_sem_${pid}`].map((name) => rm(`/dev/shm/${name}`, { force: true })));

/** What the clock says that the program and its pages read. */
export const clockOf = (window) => window.read('Date.now()');

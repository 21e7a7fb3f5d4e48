// Opens the browser the way every script and test of this folder does.
import { chromium } from '@playwright/test';
import { ZONE } from '../../moment.mjs';
import { startClock } from './clock.mjs';

/** Where the built pages are served. */
export const address = process.env.LAYSHAFT_URL ?? 'http://localhost:4713/';

export const executablePath = process.env.LAYSHAFT_CHROMIUM ?? '/usr/bin/chromium';

/** No sandbox in a container, no graphics card, and nothing that the browser would do on the network by itself. */
export const args = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const here = { locale: 'en-GB', timezoneId: ZONE };

/** A phone held upright, touched with a finger. */
export const phone = {
  ...here,
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  isMobile: true,
  hasTouch: true,
};

/** A window on a laptop. */
export const laptop = { ...here, viewport: { width: 1280, height: 800 } };

export function launch() {
  return chromium.launch({ executablePath, args });
}

/**
 * Another device, with nothing on it yet, whose clock begins with that of every test.
 * @param {import('@playwright/test').Browser} browser
 * @param {import('@playwright/test').BrowserContextOptions} device
 * @param {(context: import('@playwright/test').BrowserContext) => Promise<unknown>} setClock
 */
export async function openDevice(browser, device, setClock = startClock) {
  const context = await browser.newContext({ ...device, baseURL: address });
  await setClock(context);
  return context;
}

/**
 * A device with a profile of its own: what it kept is there when it is switched on again.
 * @param {string} profile
 * @param {(context: import('@playwright/test').BrowserContext) => Promise<unknown>} setClock
 */
export async function switchOn(profile, setClock = startClock) {
  const context = await chromium.launchPersistentContext(profile, { ...phone, baseURL: address, executablePath, args });
  await setClock(context);
  return { context, page: context.pages()[0] ?? (await context.newPage()) };
}

// Opens the browser the way every script and test of this folder does.
import { chromium } from '@playwright/test';

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

/** A phone held upright, touched with a finger. */
export const phone = {
  viewport: { width: 390, height: 844 },
  deviceScaleFactor: 2,
  isMobile: true,
  hasTouch: true,
  locale: 'en-GB',
  timezoneId: 'Europe/Berlin',
};

export function launch() {
  return chromium.launch({ executablePath, args });
}

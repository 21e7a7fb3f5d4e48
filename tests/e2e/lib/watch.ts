// What no page may ever do: ask another origin, break its own content security policy, or fail without a word.
import { test as base, expect, type BrowserContext, type Page } from '@playwright/test';
import { address } from './browser.mjs';
import { startClock } from './clock.mjs';

const ORIGIN = new URL(address).origin;

export class Watch {
  readonly foreign: string[] = [];
  readonly trouble: string[] = [];

  on(context: BrowserContext) {
    context.on('request', (request) => {
      // A test may bring a server of its own; it too is this machine.
      const url = request.url();
      if (/^(data|blob):/.test(url) || new URL(url).origin === ORIGIN || new URL(url).hostname === '127.0.0.1') return;
      this.foreign.push(url);
    });
    context.on('console', (message) => {
      if (message.type() === 'error') this.trouble.push(message.text());
    });
    context.on('weberror', (error) => this.trouble.push(error.error().message));
  }

  clean() {
    expect(this.foreign, 'requests that leave the origin').toEqual([]);
    expect(this.trouble, 'errors and broken policies on the page').toEqual([]);
  }
}

/** Every test begins at the same moment, watches its pages, and fails when one of them did what none may do. */
export const test = base.extend<{ watch: Watch }>({
  context: async ({ context }, use) => {
    await startClock(context);
    await use(context);
  },
  watch: [
    async ({ context }, use) => {
      const watch = new Watch();
      watch.on(context);
      await use(watch);
      watch.clean();
    },
    { auto: true },
  ],
});

/** Opens the app for the first time and takes the demo bike. */
export async function openDemo(page: Page) {
  const { loadDemo } = await import('./steps.mjs');
  await page.goto('./');
  await loadDemo(page);
}

export { expect };

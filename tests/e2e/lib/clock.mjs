// The one place that sets the clock of the pages. The app reads the clock on its page and hands the moment to its worker, so
// that a clock of the page is enough.
import { START_MS } from '../../moment.mjs';

/**
 * Gives the pages of a context a clock that begins at the same moment in every test, and runs on.
 * @param {import('@playwright/test').BrowserContext} context
 */
export const startClock = (context) => context.clock.install({ time: START_MS });

/**
 * Stops the date of all pages at a moment; what waits for time to pass goes on.
 * @param {import('@playwright/test').Page | import('@playwright/test').BrowserContext} where
 * @param {number | Date} at
 */
export const stopClockAt = (where, at) => where.clock.setFixedTime(at);

/**
 * What the clock of a page says.
 * @param {import('@playwright/test').Page} page
 */
export const clockOf = (page) => page.evaluate(() => Date.now());

/**
 * For measurements: the date begins at the same moment, while timers, frames and `performance.now` stay the browser's own.
 * @param {import('@playwright/test').BrowserContext} context
 */
export const startDate = (context) =>
  context.addInitScript((ahead) => {
    const Own = Date;
    globalThis.Date = class extends Own {
      /** @param {[]} given */
      constructor(...given) {
        if (given.length > 0) super(...given);
        else super(Own.now() + ahead);
      }

      static now() {
        return Own.now() + ahead;
      }
    };
  }, START_MS - Date.now());

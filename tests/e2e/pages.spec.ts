// Every page, in both themes: nothing that a screen reader, a keyboard or a knuckle would stumble over.
import AxeBuilder from '@axe-core/playwright';
import { laptop, openDevice } from './lib/browser.mjs';
import { PAGES, show } from './lib/pages.mjs';
import { wrongTargets } from './lib/targets.ts';
import { ids, spoken, unsaid } from './lib/unsaid.ts';
import { expect, openDemo, test } from './lib/watch.ts';

/** Far more than it takes, even on a busy machine: as long as there are pages to look at. */
const AT_MOST = PAGES.length * 10_000;

for (const [theme, colorScheme] of [
  ['day', 'light'],
  ['night', 'dark'],
] as const) {
  test.describe(`by ${theme}`, () => {
    test.use({ colorScheme });

    test('every page is free of accessibility violations, contrast AAA', async ({ page }) => {
      test.setTimeout(AT_MOST);
      await openDemo(page);
      for (const entry of PAGES) {
        await test.step(entry[0], async () => {
          await show(page, entry);
          const found = await new AxeBuilder({ page }).options({ rules: { 'color-contrast-enhanced': { enabled: true } } }).analyze();
          expect.soft(found.violations.map((each) => `${entry[0]}: ${each.id} at ${each.nodes.map((node) => node.target).join(', ')}`)).toEqual([]);
        });
      }
    });
  });
}

test('every target is at least 56 x 56 with 8 between, and no page is wider than the phone', async ({ page }) => {
  test.setTimeout(AT_MOST);
  await openDemo(page);
  for (const entry of PAGES) {
    await test.step(entry[0], async () => {
      await show(page, entry);
      expect.soft(await wrongTargets(page), entry[0]).toEqual([]);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over, `${entry[0]} is wider than the screen`).toBeLessThanOrEqual(0);
    });
  }
});

test('every page has one title, one main region, a name in the tab, and words for all that it says', async ({ page }) => {
  test.setTimeout(AT_MOST);
  expect(ids.size).toBeGreaterThan(3_000);
  expect(unsaid('Slack: [object Object]\nplan-left, well-kept, { $jobs }')).toEqual(['[object Object]', '{ $jobs }', 'plan-left']);
  await openDemo(page);
  for (const entry of PAGES) {
    await show(page, entry);
    expect.soft(unsaid(await spoken(page)), entry[0]).toEqual([]);
    await expect(page.locator('h1'), entry[0]).toHaveCount(1);
    await expect(page.getByRole('main'), entry[0]).toHaveCount(1);
    await expect(page, entry[0]).toHaveTitle(/Layshaft/);
  }
});

test('on a laptop no page is wider than the window, and the places stand at the edge', async ({ browser, watch }) => {
  const context = await openDevice(browser, laptop);
  watch.on(context);
  const page = await context.newPage();
  test.setTimeout(AT_MOST);
  await openDemo(page);
  const bar = await page.getByRole('navigation').boundingBox();
  expect(bar?.x).toBe(0);
  expect(bar?.height).toBe(800);
  for (const entry of PAGES) {
    await show(page, entry);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), entry[0]).toBeLessThanOrEqual(0);
  }
  await context.close();
});

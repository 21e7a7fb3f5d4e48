// Several tabs, one database.
import { goTo, settled } from './lib/steps.mjs';
import { expect, openDemo, test } from './lib/watch.ts';

/** Notes one degree more than the thermometer showed. */
async function noteOneMore(page: import('@playwright/test').Page) {
  await goTo(page, '#/bike/garage');
  await page.getByRole('button', { name: 'Temperature: one more' }).click();
  await page.getByRole('button', { name: 'Note it' }).click();
  await expect(page.getByText(/is noted/)).toBeVisible();
}

test('a second tab shows the same bike, and each hears what the other did', async ({ page, context }) => {
  await openDemo(page);
  await goTo(page, '#/bike');
  const second = await context.newPage();
  await second.goto('./#/bike');
  await settled(second);
  await expect(second.getByRole('heading', { level: 1 })).toHaveText('Orrin Tern 175');
  const climate = (tab: typeof page) => tab.getByRole('link', { name: /Temperature in the garage/ });
  const before = await climate(page).textContent();

  await noteOneMore(second);
  await expect(climate(page)).not.toHaveText(before ?? '');
  const between = await climate(page).textContent();

  await goTo(second, '#/bike');
  await noteOneMore(page);
  await expect(climate(second)).not.toHaveText(between ?? '');
});

test('when the first tab is closed the second one takes over and goes on', async ({ page, context }) => {
  await openDemo(page);
  const second = await context.newPage();
  await second.goto('./#/bike');
  await settled(second);
  await page.close();
  await noteOneMore(second);
  await second.reload();
  await settled(second);
  await expect(second.getByRole('button', { name: /Temperature: .* Type/ })).toBeVisible();
});

test('a tab that cannot get at the data says so plainly, and opens by itself once it can', async ({ page, context }) => {
  const holder = await context.newPage();
  // A bare picture asks for the mark of its site; there is none.
  await holder.route('**/favicon.ico', (route) => route.fulfill({ status: 204 }));
  await holder.goto('./icons/layshaft.svg');
  await holder.evaluate(
    () =>
      new Promise<void>((held) => {
        void navigator.locks.request('layshaft.database', () => {
          held();
          return new Promise(() => {});
        });
      }),
  );
  await page.goto('./');
  await expect(page.getByRole('heading', { name: 'Open in another tab' })).toBeVisible();
  await holder.close();
  await expect(page.getByRole('button', { name: /demo bike/ })).toBeVisible();
});

// Onto the home screen: four drawn steps where the browser has no button, the address that the data belongs to, and a bundle by the
// share sheet of a phone.
import { goTo, press } from './lib/steps.mjs';
import { wrongTargets } from './lib/targets.ts';
import { expect, openDemo, test } from './lib/watch.ts';

test('a device with nothing on it says which address is empty; the steps are drawn for both kinds of browser', async ({ page }) => {
  await page.goto('./');
  await expect(page.getByText(/Nothing has been entered at this address yet/)).toContainText(new URL(page.url()).origin);
  await openDemo(page);
  await goTo(page, '#/bike/device');
  await page.getByRole('link', { name: /^On the home screen/ }).click();
  await expect(page.locator('ol li')).toHaveCount(4);
  await expect(page.getByText('Open the menu of the browser')).toBeVisible();
  await page.getByRole('radio', { name: 'A share button' }).click();
  await expect(page.getByText('Tap the share button')).toBeVisible();
  await expect(page.getByText(new URL(page.url()).origin)).toBeVisible();
  expect(await wrongTargets(page)).toEqual([]);
  await page.getByRole('link', { name: /^Move to another address/ }).click();
  await page.locator('main[data-page="bike/bundle"]').waitFor();
});

test('where the browser offers it, one button puts it on the home screen', async ({ page }) => {
  await page.goto('./');
  await openDemo(page);
  await page.evaluate(() => {
    const offer = Object.assign(new Event('beforeinstallprompt', { cancelable: true }), { prompt: () => Promise.resolve((document.title = 'asked')) });
    dispatchEvent(offer);
  });
  await goTo(page, '#/bike/home-screen');
  await expect(page.locator('ol li')).toHaveCount(0);
  await press(page, 'Put it on the home screen');
  await expect(page.locator('ol li')).toHaveCount(4);
});

test('a bundle goes out by the share sheet where that takes it, and one that was left counts as not saved', async ({ page }) => {
  await page.addInitScript(() => {
    const shared: string[] = [];
    const leave = { yes: true };
    Object.assign(window, { shared, leave });
    navigator.canShare = () => true;
    navigator.share = (data) => {
      shared.push(data?.files?.[0]?.name ?? '');
      return leave.yes ? Promise.reject(new DOMException('left', 'AbortError')) : Promise.resolve();
    };
  });
  await openDemo(page);
  await goTo(page, '#/bike/bundle');
  await press(page, 'Save a bundle');
  await expect(page.getByRole('status').filter({ hasText: 'Nothing was saved.' })).toBeVisible();
  await expect(page.getByText('never')).toBeVisible();
  await page.evaluate(() => ((window as unknown as { leave: { yes: boolean } }).leave.yes = false));
  await press(page, 'Save a bundle');
  await expect(page.getByRole('status').filter({ hasText: '.layshaft.sqlite' })).toBeVisible();
  const names = await page.evaluate(() => (window as unknown as { shared: string[] }).shared);
  // Bike, device, day.
  expect(names.at(-1)).toMatch(/^orrin-tern-175-[0-9a-f]{4}-2026-01-10\.layshaft\.sqlite$/);
});

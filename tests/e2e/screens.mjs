// Writes a PNG of every page in both themes, as a phone shows it. `--whole` takes whole pages instead of the first screen.
import { mkdir } from 'node:fs/promises';
import { laptop, launch, openDevice, phone } from './lib/browser.mjs';
import { stopClockAt } from './lib/clock.mjs';
import { PAGES, readingItem, show } from './lib/pages.mjs';
import { goTo, loadDemo } from './lib/steps.mjs';

const out = new URL('../../target/screens/', import.meta.url).pathname;
/** `--manifest` writes the few pictures that the installer and the README show, beside the icons of the app. */
const manifest = process.argv.includes('--manifest');
const MANIFEST = [
  ['today-day', '#/today', phone, 'light'],
  ['gearing-day', '#/numbers/gearing?front=16&rear=38', phone, 'light'],
  ['inspect-night', readingItem, phone, 'dark'],
  ['plan-wide', '#/plan?view=calendar&days=28', laptop, 'light'],
];
/** A Thursday evening in March: what the demo bike waits for falls into the days that are drawn. */
const WHEN = new Date('2026-03-19T18:00:00+01:00');
const atThatTime = (context) => stopClockAt(context, WHEN);
const whole = process.argv.includes('--whole');
const only = process.argv.slice(2).filter((word) => !word.startsWith('--'));

const browser = await launch();
if (manifest) await forInstaller();
else await everyPage();
await browser.close();

async function forInstaller() {
  const folder = new URL('../../mobile-shell/ui/public/screens/', import.meta.url).pathname;
  for (const [name, hash, device, colorScheme] of MANIFEST) {
    const context = await openDevice(browser, { ...device, colorScheme }, atThatTime);
    const page = await context.newPage();
    await page.goto('./');
    await loadDemo(page);
    await goTo(page, typeof hash === 'function' ? await hash(page) : hash);
    await page.evaluate(() => document.fonts.ready);
    await page.screenshot({ path: `${folder}${name}.png`, animations: 'disabled' });
    await context.close();
  }
  console.log(`Pictures are in ${folder}`);
}

async function everyPage() {
  for (const [theme, colorScheme] of [
    ['day', 'light'],
    ['night', 'dark'],
  ]) {
    await mkdir(out + theme, { recursive: true });
    const context = await openDevice(browser, { ...phone, colorScheme }, atThatTime);
    const page = await context.newPage();
    await page.goto('./');
    await page.getByRole('button', { name: /demo bike/ }).waitFor();
    if (only.length === 0) await page.screenshot({ path: `${out}${theme}/first-run.png` });
    await loadDemo(page);
    for (const entry of PAGES) {
      const [name] = entry;
      if (only.length > 0 && !only.includes(name)) continue;
      await show(page, entry);
      await page.evaluate(() => document.fonts.ready);
      await page.screenshot({ path: `${out}${theme}/${name}.png`, fullPage: whole, animations: 'disabled' });
    }
    await context.close();
  }
  console.log(`Pictures are in ${out}`);
}

// What is kept on this device: it comes back after a reload, and what cannot be read is forgotten, not believed.
import { beforeEach, expect, test, vi } from 'vitest';
import { fromBase64, toBase64 } from '../src/app/device/files.ts';
import { OddCup, sizes } from '../src/places/numbers/fluids/Filling.svelte.ts';
import { settings } from '../src/app/settings.svelte.ts';
import { openDesk, settled } from './desk.ts';
import { door, refusal } from './door.ts';

beforeEach(() => vi.resetModules());

/** The settings as a page finds them that is loaded now. */
const reloaded = async () => (await import('../src/app/settings.svelte.ts')).settings;

test('settings hold after a reload', async () => {
  const first = await reloaded();
  expect([first.theme, first.cups, first.shownIn('millimetre')]).toEqual(['system', [], 'millimetre']);
  first.setTheme('night');
  first.setCups([250, 1000]);
  first.show('millimetre', 'inch');
  vi.resetModules();
  const again = await reloaded();
  expect([again.theme, again.cups, again.shownIn('millimetre')]).toEqual(['night', [250, 1000], 'inch']);
});

test('settings that cannot be read are the first ones; those of an older version keep what they say', async () => {
  localStorage.setItem('layshaft.settings', '{');
  expect((await reloaded()).theme).toBe('system');
  vi.resetModules();
  localStorage.setItem('layshaft.settings', '{"theme":"day"}');
  const older = await reloaded();
  expect([older.theme, older.readAloud, older.cups]).toEqual(['day', false, []]);
});

test('when somebody last looked is a time, or it was never', async () => {
  for (const [kept, expected] of [
    ['1768035600000', 1768035600000],
    ['soon', null],
    ['-5', null],
    ['', null],
  ] as const) {
    localStorage.setItem('layshaft.seen', kept);
    vi.resetModules();
    expect((await import('../src/app/time/seen.ts')).seenAtStart, kept).toBe(expected);
  }
});

test('bytes of any length come back as they were', () => {
  for (const length of [0, 1, 2, 3, 0x8000, 0x8001]) {
    const bytes = Uint8Array.from({ length }, (_, at) => (at * 31) % 256);
    expect(String(fromBase64(toBase64(bytes))), String(length)).toBe(String(bytes));
  }
});

test('a cup joins those at hand once the core can pour with it; until then it stands there refused', async () => {
  await openDesk();
  settings.setCups([500]);
  const odd = new OddCup();
  const tiny = odd.add(1);
  await settled();
  door.asks[0]?.refuse(refusal('cupsMl', 'A cup holds 10 mL or more.'));
  await tiny;
  expect([odd.typed, odd.wrong, settings.cups]).toEqual([1, 'A cup holds 10 mL or more.', [500]]);
  const good = odd.add(330.4);
  await settled();
  expect(door.asks[1]?.asked).toEqual({ kind: 'filling', litres: 1, cupsMl: [500, 330] });
  door.asks[1]?.answer({});
  await good;
  expect([odd.typed, odd.wrong, settings.cups]).toEqual([null, '', [500, 330]]);
  expect(sizes().filter(({ value }) => value === '330')).toHaveLength(1);
});

test('the way to the home screen is guessed from the browser, also where a tablet calls itself a laptop', async () => {
  const { homeScreenBy } = await import('../src/app/device/install.svelte.ts');
  expect(homeScreenBy('Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)', 5)).toBe('share');
  expect(homeScreenBy('Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)', 5)).toBe('share');
  expect(homeScreenBy('Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)', 0)).toBe('menu');
  expect(homeScreenBy('Mozilla/5.0 (Linux; Android 15; Mobile)', 5)).toBe('menu');
});

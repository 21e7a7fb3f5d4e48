// What every test finds: an empty device, the clock of all tests, and a door that answers what the test says.
import { beforeEach, vi } from 'vitest';
import { START_MS } from '../../../tests/moment.mjs';
import { door } from './door.ts';

vi.useFakeTimers({ now: START_MS, toFake: ['Date', 'setInterval', 'clearInterval'] });
vi.mock('../src/door/index.ts', async () => ({ openDoor: (await import('./door.ts')).door.opened }));

beforeEach(() => {
  vi.setSystemTime(START_MS);
  localStorage.clear();
  door.forget();
});

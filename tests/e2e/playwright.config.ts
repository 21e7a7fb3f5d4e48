// The browser tests walk the built pages, served by LAYSHAFT_URL, on a phone held upright.
import { defineConfig } from '@playwright/test';
import { address, args, executablePath, phone } from './lib/browser.mjs';

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.ts',
  outputDir: './results',
  fullyParallel: true,
  // Two at once at the most: each browser brings its own database and wants a core.
  workers: 2,
  retries: 0,
  // Wide, for a machine that is busy with something else: a step that waits in vain is found by the time of its own.
  timeout: 300_000,
  expect: { timeout: 30_000 },
  reporter: [['list']],
  use: {
    ...phone,
    baseURL: address,
    actionTimeout: 30_000,
    launchOptions: { executablePath, args },
    trace: 'retain-on-failure',
  },
});

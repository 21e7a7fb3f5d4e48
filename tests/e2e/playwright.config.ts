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
  timeout: 90_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  use: {
    ...phone,
    baseURL: address,
    actionTimeout: 15_000,
    launchOptions: { executablePath, args },
    trace: 'retain-on-failure',
  },
});

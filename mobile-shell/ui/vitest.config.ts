// The logic of the pages, tested without a browser: on the clock and in the zone of all tests, with a stand-in for the door.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';
import { ZONE } from '../../tests/moment.mjs';
import { fluent } from './fluent.ts';

export default defineConfig({
  plugins: [fluent(), svelte()],
  // Svelte as it runs in the browser.
  resolve: { conditions: ['browser'] },
  test: {
    // No test waits for a clock; a busy machine may take its time.
    testTimeout: 120_000,
    include: ['tests/**/*.test.ts'],
    environment: 'happy-dom',
    setupFiles: ['tests/setup.ts'],
    env: { TZ: ZONE },
    unstubGlobals: true,
  },
});

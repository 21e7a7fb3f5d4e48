// Builds the pages and the service worker that keeps every one of their files, so that they open without a network.
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { fluent } from './fluent.ts';

/** The colour behind the app while it opens: the paper of the day theme. */
const PAPER = '#f3eee2';

export default defineConfig({
  base: './',
  plugins: [
    fluent(),
    svelte(),
    VitePWA({
      registerType: 'prompt',
      injectRegister: null,
      manifest: {
        name: 'Layshaft',
        short_name: 'Layshaft',
        description: 'From a heap of parts to a passed inspection: what to do next, and when the bike will be ready.',
        lang: 'en',
        id: './',
        start_url: './#/today',
        scope: './',
        display: 'standalone',
        orientation: 'any',
        background_color: PAPER,
        theme_color: PAPER,
        categories: ['utilities', 'productivity'],
        icons: [
          { src: 'icons/layshaft.svg', sizes: 'any', type: 'image/svg+xml' },
          { src: 'icons/layshaft-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icons/layshaft-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icons/layshaft-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
        screenshots: [
          { src: 'screens/today-day.png', sizes: '780x1688', type: 'image/png', form_factor: 'narrow', label: 'Today' },
          { src: 'screens/gearing-day.png', sizes: '780x1688', type: 'image/png', form_factor: 'narrow', label: 'Gearing' },
          { src: 'screens/plan-wide.png', sizes: '1280x800', type: 'image/png', form_factor: 'wide', label: 'Plan' },
        ],
      },
      workbox: {
        clientsClaim: true,
        cleanupOutdatedCaches: true,
        navigateFallback: 'index.html',
        maximumFileSizeToCacheInBytes: 8 * 1024 * 1024,
        // Everything that the pages ask for. The pictures of the manifest are for the installer alone.
        globPatterns: ['**/*.{js,css,html,wasm,svg,woff2}', '{icons/*.png,words/*.json}'],
      },
    }),
  ],
  worker: { format: 'es' },
  build: {
    target: 'es2022',
    // Left as they are written: `light-dark()` keeps both themes in one line.
    cssTarget: ['chrome123', 'safari17.5', 'firefox128'],
    // Inlined files would be data: addresses, which the content security policy does not let in.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  server: { fs: { allow: ['../..'] } },
});

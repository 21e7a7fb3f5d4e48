// An empty page of the same stack (Vite, Svelte, service worker, font), built beside ours: what is left when the app does nothing.
import { mkdir, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ui = new URL('../../../mobile-shell/ui/', import.meta.url);
/** Below the packages of the app, so that they are found from here; nothing in it is kept by git. */
const folder = new URL('node_modules/.empty-page/', ui);

const FILES = {
  'index.html': '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Empty</title></head><body><div id="app"></div><script type="module" src="./main.ts"></script></body></html>',
  'main.ts': `import { mount } from 'svelte';
import App from './App.svelte';
mount(App, { target: document.getElementById('app')! });
navigator.serviceWorker.register('./sw.js');`,
  'App.svelte': '<main><h1 id="page-title">Empty</h1></main>',
};

/** Builds it with the packages of the app, and gives the folder that holds it. */
export async function buildEmptyPage() {
  const src = new URL('src/', folder);
  await mkdir(src, { recursive: true });
  for (const [name, text] of Object.entries(FILES)) await writeFile(new URL(name, src), text);
  const require = createRequire(new URL('package.json', ui));
  const load = async (name) => import(pathToFileURL(require.resolve(name)).href);
  const [{ build }, { svelte }, { VitePWA }] = await Promise.all([load('vite'), load('@sveltejs/vite-plugin-svelte'), load('vite-plugin-pwa')]);
  await build({
    root: fileURLToPath(src),
    base: './',
    configFile: false,
    logLevel: 'error',
    plugins: [
      svelte({ configFile: false, compilerOptions: { runes: true } }),
      VitePWA({ registerType: 'prompt', injectRegister: null, workbox: { clientsClaim: true, globPatterns: ['**/*.{js,css,html}'] } }),
    ],
    build: { target: 'es2022', outDir: fileURLToPath(new URL('dist/', folder)), emptyOutDir: true },
  });
  return fileURLToPath(new URL('dist/', folder));
}

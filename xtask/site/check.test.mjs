// What the check of a host says of hosts that do one thing wrong each. The hosts are made here, on this machine.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const CHECK = fileURLToPath(new URL('./check.mjs', import.meta.url));
const FILES = { 'index.html': 'page', 'sw.js': 'worker', 'assets/door-1a2b.wasm': 'module', 'manifest.webmanifest': '{}' };
const TYPES = { html: 'text/html', js: 'text/javascript', wasm: 'application/wasm', webmanifest: 'application/manifest+json', json: 'application/json' };
const listed = Object.entries(FILES).map(([path, text]) => ({ path, bytes: text.length, sha256: createHash('sha256').update(text).digest('hex') }));

/** Runs the check on a host that answers as every file should be answered, but for what `otherwise` says of a path. */
async function checked(otherwise = () => ({})) {
  const host = createServer((request, response) => {
    const path = request.url.replace('/bike/', '') || 'index.html';
    const text = path === 'files.json' ? JSON.stringify({ files: listed }) : FILES[path];
    const cache = path.startsWith('assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
    const usual = { status: text === undefined ? 404 : 200, text, type: TYPES[path.split('.').pop()], cache };
    const given = { ...usual, ...otherwise(path) };
    response.writeHead(given.status, { 'content-type': given.type, 'cache-control': given.cache, 'x-content-type-options': 'nosniff' });
    response.end(given.text);
  });
  await new Promise((open) => host.listen(0, '127.0.0.1', open));
  const address = `http://127.0.0.1:${host.address().port}/bike`;
  const done = await new Promise((end) => execFile('node', [CHECK, address], (error, out) => end({ code: error?.code ?? 0, out })));
  host.close();
  return done;
}

test('a host that does all as it should passes', async () => {
  const { code, out } = await checked();
  assert.equal(code, 0, out);
  assert.match(out, /All 4 files, each as it was built/);
});

test('a module of a wrong type is named with the right one', async () => {
  const { code, out } = await checked((path) => (path.endsWith('.wasm') ? { type: 'application/octet-stream' } : {}));
  assert.equal(code, 1);
  assert.match(out, /✗ assets\/door-1a2b\.wasm comes as application\/octet-stream and has to come as application\/wasm/);
});

test('an old file beside new ones, and one that is missing, are named', async () => {
  const old = await checked((path) => (path === 'index.html' ? { text: 'an older page' } : {}));
  assert.equal(old.code, 1);
  assert.match(old.out, /✗ Not the file that was built: index\.html\. Old files lie beside new ones/);
  const missing = await checked((path) => (path.endsWith('.wasm') ? { status: 404 } : {}));
  assert.match(missing.out, /✗ Not there: assets\/door-1a2b\.wasm \(404\)/);
});

test('a service worker that is kept for long keeps updates away', async () => {
  const { code, out } = await checked((path) => (path === 'sw.js' ? { cache: 'max-age=604800' } : {}));
  assert.equal(code, 1);
  assert.match(out, /✗ sw\.js may be kept for 168 h/);
});

test('a host without the list, or without an answer, is told in words', async () => {
  const { code, out } = await checked((path) => (path === 'files.json' ? { status: 404, text: '' } : {}));
  assert.equal(code, 1);
  assert.match(out, /files\.json cannot be read/);
  // A port at which nobody answers any more.
  const gone = createServer();
  await new Promise((open) => gone.listen(0, '127.0.0.1', open));
  const { port } = gone.address();
  await new Promise((closed) => gone.close(closed));
  const silent = await new Promise((end) => execFile('node', [CHECK, `http://127.0.0.1:${port}/`], (error, out) => end({ code: error?.code, out })));
  assert.equal(silent.code, 1);
  assert.match(silent.out, /gives no answer: ECONNREFUSED/);
});

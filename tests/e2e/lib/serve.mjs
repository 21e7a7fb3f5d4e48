// Serves a folder of built pages on this machine, for tests and measurements that need a server of their own.
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const TYPES = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.wasm': 'application/wasm',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

/**
 * `change` may alter a file on its way out: it gets the path and the bytes.
 * @param {string} folder
 * @param {(path: string, body: Buffer) => Buffer | string} [change]
 */
export async function serve(folder, change = (_, body) => body) {
  const server = createServer(async (asked, answer) => {
    const path = normalize(decodeURIComponent(new URL(asked.url ?? '/', 'http://localhost').pathname));
    const file = path === '/' ? '/index.html' : path;
    try {
      const body = change(file, await readFile(join(folder, file)));
      answer.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream', 'cache-control': 'no-cache' });
      answer.end(body);
    } catch {
      answer.writeHead(404).end();
    }
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', () => ready(undefined)));
  const port = /** @type {import('node:net').AddressInfo} */ (server.address()).port;
  return {
    address: `http://127.0.0.1:${port}/`,
    close() {
      server.closeAllConnections();
      server.close();
    },
  };
}

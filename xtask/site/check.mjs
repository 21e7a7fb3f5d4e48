// Asks a host for every file of the pages as a browser would, and says what it does wrong. Ends with 1 when something would keep the
// pages from being installed, from working offline or from being brought up to date.
import { createHash } from 'node:crypto';

const given = process.argv[2];
const base = new URL(given.endsWith('/') || given.endsWith('.html') ? given : `${given}/`);
const local = ['localhost', '127.0.0.1', '[::1]'].includes(base.hostname);
/** What each file has to come as. */
const TYPES = {
  html: ['text/html'],
  js: ['text/javascript', 'application/javascript'],
  css: ['text/css'],
  wasm: ['application/wasm'],
  json: ['application/json'],
  webmanifest: ['application/manifest+json', 'application/json'],
  svg: ['image/svg+xml'],
  png: ['image/png'],
  woff2: ['font/woff2'],
};
let wrong = 0;
const bad = (text) => {
  wrong += 1;
  console.log(`✗ ${text}`);
};
const remark = (text) => console.log(`· ${text}`);
const good = (text) => console.log(`✓ ${text}`);

async function get(path) {
  const address = new URL(path, base);
  try {
    const answer = await fetch(address, { cache: 'no-store' });
    return { answer, bytes: Buffer.from(await answer.arrayBuffer()) };
  } catch (error) {
    const why = error.cause?.code ?? error.cause?.message ?? error.message;
    bad(`${address.href} gives no answer: ${why}.`);
    return null;
  }
}

if (base.protocol === 'http:' && !local) bad('The address is http. Browsers install pages, and keep them offline, only over HTTPS.');
else good(base.protocol === 'https:' ? 'HTTPS.' : 'An address of this machine, which browsers trust without HTTPS.');

const list = await get('files.json');
let files = [];
if (list) {
  try {
    if (!list.answer.ok) throw new Error(`status ${list.answer.status}`);
    files = JSON.parse(list.bytes.toString()).files;
  } catch (error) {
    bad(`files.json cannot be read (${error.message}): is this the folder that \`cargo xtask build\` made, complete, under this address?`);
  }
}

const [old, missing, types, moved] = [[], [], [], []];
let told = 0;
for (const { path, sha256 } of files) {
  const got = await get(path);
  if (!got) {
    if (++told === 3) break;
    continue;
  }
  const { answer, bytes } = got;
  if (!answer.ok) {
    missing.push(`${path} (${answer.status})`);
    continue;
  }
  if (answer.redirected) moved.push(path);
  if (createHash('sha256').update(bytes).digest('hex') !== sha256) old.push(path);
  const wanted = TYPES[path.split('.').pop()];
  const type = (answer.headers.get('content-type') ?? 'nothing').split(';')[0].trim();
  if (wanted && !wanted.includes(type)) types.push(`${path} comes as ${type} and has to come as ${wanted[0]}`);
}
const some = (list) => `${list.slice(0, 5).join(', ')}${list.length > 5 ? ` and ${list.length - 5} more` : ''}`;
if (missing.length > 0) bad(`Not there: ${some(missing)}. Copy the folder again, all of it.`);
if (old.length > 0)
  bad(`Not the file that was built: ${some(old)}. Old files lie beside new ones: empty the folder and copy it again, or clear the host's cache.`);
for (const line of types.slice(0, 5)) bad(`${line}.`);
if (moved.length > 0) bad(`Comes by a redirect, which a service worker does not take: ${some(moved)}.`);
if (files.length > 0 && missing.length + old.length + types.length + moved.length === 0 && told === 0)
  good(`All ${files.length} files, each as it was built and of its own type.`);

for (const path of ['', 'index.html', 'sw.js']) {
  const got = await get(path);
  if (!got) continue;
  const { answer } = got;
  const name = path || 'The folder itself';
  if (!answer.ok) {
    bad(`${name} answers with ${answer.status}.`);
    continue;
  }
  const rule = answer.headers.get('cache-control') ?? '';
  const seconds = Number(/max-age=(\d+)/.exec(rule)?.[1] ?? Number.NaN);
  if (/no-cache|no-store/.test(rule) || seconds === 0) good(`${name} is asked for again each time.`);
  else if (seconds > 86_400) bad(`${name} may be kept for ${Math.round(seconds / 3600)} h: an update comes that late. It needs Cache-Control: no-cache.`);
  else remark(`${name} has no Cache-Control: no-cache; an update may come late.`);
  if (path === '' && !answer.headers.has('x-content-type-options')) remark('X-Content-Type-Options: nosniff is missing.');
}
const hashed = files.find(({ path }) => path.startsWith('assets/'));
if (hashed) {
  const got = await get(hashed.path);
  const rule = got?.answer.headers.get('cache-control') ?? '';
  if (got && !/immutable|max-age=\d{6,}/.test(rule)) remark('Files under assets could be kept for a year: their names change with what is in them.');
  const module = files.find(({ path }) => path.endsWith('.wasm'));
  const coded = module && (await get(module.path))?.answer.headers.get('content-encoding');
  if (module && !coded) remark(`${module.path} comes uncompressed (${(module.bytes / 1e6).toFixed(1)} MB): the first visit takes longer.`);
}
console.log(wrong === 0 ? '\nNothing stands against it.' : `\n${wrong} wrong.`);
process.exit(wrong === 0 ? 0 : 1);

// The folder for a web host, walked as its user would: under a path, over HTTPS with a certificate of its own, by an address that is
// not localhost. It runs in a network of its own (`cargo xtask test --only site`), with nginx set up by the file that lies in the folder.
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { switchOn } from './lib/browser.mjs';
import { goTo, press, settled } from './lib/steps.mjs';

const HOST = process.env.LAYSHAFT_HOST;
const SITE = process.env.LAYSHAFT_SITE;
const CHECK = fileURLToPath(new URL('../../xtask/site/check.mjs', import.meta.url));
const home = mkdtempSync(join(tmpdir(), 'layshaft-site-'));
const [www, bike, profile] = [join(home, 'www'), join(home, 'www/workshop/bike'), join(home, 'profile')];
const address = `https://${HOST}/workshop/bike/`;
const said = (text) => console.log(`  ${text}`);

cpSync(SITE, bike, { recursive: true });
const [key, cert] = [join(home, 'key.pem'), join(home, 'cert.pem')];
const quiet = { stdio: ['ignore', 'ignore', 'pipe'] };
execFileSync(
  'openssl',
  [
    'req',
    '-x509',
    '-newkey',
    'rsa:2048',
    '-nodes',
    '-days',
    '3650',
    '-subj',
    '/CN=Layshaft test',
    '-addext',
    `subjectAltName=IP:${HOST}`,
    '-keyout',
    key,
    '-out',
    cert,
  ],
  quiet,
);
const trusted = join(home, '.pki/nssdb');
mkdirSync(trusted, { recursive: true });
execFileSync('certutil', ['-d', `sql:${trusted}`, '-N', '--empty-password'], quiet);
execFileSync('certutil', ['-d', `sql:${trusted}`, '-A', '-t', 'C,,', '-n', 'layshaft', '-i', cert], quiet);
// The browser trusts what lies under its home.
process.env.HOME = home;
writeFileSync(
  join(home, 'nginx.conf'),
  `daemon off; user root; pid ${home}/pid; error_log stderr; worker_processes 1; events {}
http {
  access_log off;
  ${['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map((each) => `${each}_temp_path ${home}/${each};`).join(' ')}
  server { listen ${HOST}:443 ssl; ssl_certificate ${cert}; ssl_certificate_key ${key}; root ${www}; include ${bike}/nginx.conf; }
}
`,
);

/** Starts the host and waits until it answers. */
async function hostUp() {
  const nginx = spawn('nginx', ['-p', home, '-c', join(home, 'nginx.conf')], { stdio: ['ignore', 'ignore', 'inherit'] });
  for (;;) {
    const up = await new Promise((end) =>
      spawn('openssl', ['s_client', '-connect', `${HOST}:443`], { stdio: ['pipe', 'ignore', 'ignore'] })
        .on('exit', (code) => end(code === 0))
        .stdin.end(),
    );
    if (up) break;
    if (nginx.exitCode !== null) throw new Error(`nginx ended with ${nginx.exitCode}`);
  }
  return () => new Promise((end) => (nginx.exitCode === null && nginx.signalCode === null ? nginx.on('exit', end).kill() : end()));
}

/** Puts another version on the host: the same pages with another sentence in the one that opens, and what the worker keeps. */
function publish(sentence, changeWorker = (text) => text) {
  const page = readFileSync(join(SITE, 'index.html'), 'utf8').replace('Bring a long-standing', `${sentence} Bring a long-standing`);
  const revision = createHash('md5').update(page).digest('hex');
  const worker = readFileSync(join(SITE, 'sw.js'), 'utf8')
    .replace(/(url:"index\.html",revision:")[^"]*/, `$1${revision}`)
    .replace(/(revision:")[^"]*(",url:"index\.html")/, `$1${revision}$2`);
  for (const [name, text] of [
    ['index.html', page],
    ['sw.js', changeWorker(worker)],
  ]) {
    rmSync(join(bike, `${name}.br`), { force: true });
    rmSync(join(bike, `${name}.gz`), { force: true });
    writeFileSync(join(bike, name), text);
  }
}

const sentenceOf = (page) => page.locator('meta[name=description]').getAttribute('content');
const bikeIsThere = (page) => page.waitForFunction(async () => (await window.layshaft.ask({ kind: 'shelf' })).bikes.some(({ name }) => name === 'Shed find'));

let hostDown = await hostUp();
let context = null;
try {
  const env = { ...process.env, NODE_EXTRA_CA_CERTS: cert };
  const check = execFileSync('node', [CHECK, address], { env, encoding: 'utf8' });
  assert.match(check, /Nothing stands against it/);
  assert.match(check, /✓ HTTPS/);
  assert.doesNotMatch(check, /uncompressed/);
  said('nginx, set up by the file in the folder, passes check-site');

  let page;
  ({ context, page } = await switchOn(profile));
  await page.goto(address);
  assert.equal(await page.evaluate(() => isSecureContext), true);
  await press(page, 'Start my bike');
  await page.getByLabel('Name of the bike').fill('Shed find');
  await press(page, 'Next');
  await page.getByRole('heading', { level: 1, name: 'What kind of bike is it?' }).waitFor();
  await goTo(page, '#/bike/device');
  await page.getByText('Kept for offline use.').waitFor();
  const devtools = await context.newCDPSession(page);
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
  assert.deepEqual(installabilityErrors, [], 'a browser can install it');
  said('it can be installed, and is kept for offline use');

  await hostDown();
  await page.reload();
  await settled(page);
  await bikeIsThere(page);
  await context.close();
  ({ context, page } = await switchOn(profile));
  await page.goto(address);
  await settled(page);
  await bikeIsThere(page);
  said('without the host it opens again, also after the browser was closed');

  publish('Newer.');
  hostDown = await hostUp();
  await page.reload();
  await press(page, 'Take it now');
  await page.waitForFunction(() => document.querySelector('meta[name=description]').content.startsWith('Newer.'));
  await settled(page);
  await bikeIsThere(page);
  said('a newer version is offered, taken, and has the bike');

  // A version of which a file is missing on the host: it is never taken, and what was there goes on, also without the host.
  publish('Broken.', (text) => text.replace('url:"index.html"', 'url:"index.html"},{revision:"1",url:"gone.html"'));
  await page
    .evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      const failed = new Promise((end) =>
        registration.addEventListener('updatefound', () => {
          const worker = registration.installing;
          worker.addEventListener('statechange', () => end(worker.state));
        }),
      );
      await registration.update();
      return failed;
    })
    .then((state) => assert.equal(state, 'redundant'));
  await hostDown();
  await page.reload();
  await settled(page);
  assert.match(await sentenceOf(page), /^Newer\./);
  await bikeIsThere(page);
  said('a version that is not complete is refused, and the one before goes on');
} finally {
  await context?.close();
  await hostDown();
  rmSync(home, { recursive: true, force: true });
}

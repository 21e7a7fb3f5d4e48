// Drives the desktop window: a screen of its own, the web view's own driver, and the few calls of the W3C WebDriver
// protocol that the tests need. Everything that is started here is ended here, by its process id.
import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { openSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

import { fixedClock, forgetClock } from './clock.mjs';

/** How long anything may take before the test gives up, in milliseconds. */
const PATIENCE = 60_000;
/** So long a start waits for each answer, milliseconds, and so often it is made. */
const START = 20_000;
const STARTS = 3;

/** A screen that is not there. Xvfb picks a free number and writes it to the pipe when it is ready. */
export async function startScreen() {
  const xvfb = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1024x900x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const failed = once(xvfb, 'exit').then(([code]) => Promise.reject(new Error(`Xvfb ended with ${code}`)));
  const [number] = await Promise.race([once(xvfb.stdio[3], 'data'), failed]);
  failed.catch(() => {});
  const display = `:${String(number).trim()}`;
  return { display, stop: () => end(xvfb), pressEnterIn: (title) => pressEnter(display, title) };
}

/** Waits for a window of the system's own with this title, which no web driver reaches, and presses Enter in it. */
async function pressEnter(display, title) {
  const hand = (...words) => promisify(execFile)('xdotool', words, { env: { PATH: process.env.PATH, DISPLAY: display }, timeout: PATIENCE });
  const { stdout } = await hand('search', '--sync', '--onlyvisible', '--name', title);
  const [id] = stdout.trim().split('\n');
  await hand('windowfocus', '--sync', id, 'key', '--window', id, 'Return');
}

/** A message bus of its own, with an ear on every notice that a program asks to show. */
export async function startBus() {
  const daemon = spawn('dbus-daemon', ['--session', '--nofork', '--print-address=1'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const [line] = await once(daemon.stdout, 'data');
  const address = String(line).trim();
  const ear = spawn('dbus-monitor', ['--address', address, "interface='org.freedesktop.Notifications'"], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  let heard = '';
  ear.stdout.on('data', (text) => (heard += text));
  // The monitor says so when it has got its own name on the bus.
  await until('the ear is on the bus', () => heard.includes('NameAcquired'));
  return {
    address,
    hears: (wanted) => until(String(wanted), () => wanted.test(heard)),
    stop: async () => {
      await end(ear);
      await end(daemon);
    },
  };
}

/** A home folder of its own, so that no other database is touched. */
export async function freshHome() {
  const home = await mkdtemp(join(tmpdir(), 'layshaft-window-'));
  // The web view's own processes outlive the window by a moment and may still write into it.
  return { home, remove: () => rm(home, { recursive: true, force: true, maxRetries: 20, retryDelay: 100 }) };
}

/**
 * Opens the program under test and gives a session in its window, once that shows a page of its own.
 *
 * The clock is set by a library that is loaded before all others. Now and then its lock of condition variables stops a process for good
 * while that starts (seen in `pthread_cond_destroy`, from the first words with the screen). Such a start is ended and made again.
 */
export async function openWindow(options) {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await launch(options);
    } catch (error) {
      if (attempt === STARTS || !isUnanswered(error)) throw error;
      console.log(`the window did not start: attempt ${attempt} of ${STARTS}`);
    }
  }
}

async function launch({ app, display, home, bus = 'disabled:' }) {
  const [port, clock] = await Promise.all([freePort(), fixedClock()]);
  // The program inherits the driver's output: a file, because an orphan would hold a pipe open.
  const log = openSync(join(home, 'window.log'), 'a');
  const driver = spawn('WebKitWebDriver', [`--port=${port}`, '--host=127.0.0.1'], {
    // A file dialog opens in the folder that the program was started in.
    cwd: home,
    // A group of its own, so that a program that hangs goes with it.
    detached: true,
    stdio: ['ignore', log, log],
    env: {
      PATH: process.env.PATH,
      HOME: home,
      DISPLAY: display,
      DBUS_SESSION_BUS_ADDRESS: bus,
      // Lets the driver into the window's web view.
      TAURI_WEBVIEW_AUTOMATION: 'true',
      ...clock,
    },
  });
  try {
    const address = `http://127.0.0.1:${port}`;
    await until('the driver answers', () => fetch(`${address}/status`).then((answer) => answer.ok, () => false));
    const capabilities = { alwaysMatch: { 'webkitgtk:browserOptions': { binary: app, args: [] } } };
    const { sessionId } = await call(`${address}/session`, 'POST', { capabilities }, START);
    const session = new Session(`${address}/session/${sessionId}`, driver);
    // It begins with a blank page, which is complete too.
    await until('a page of its own', () => session.read(`location.href !== 'about:blank' && document.readyState === 'complete'`, START));
    return session;
  } catch (error) {
    process.kill(-driver.pid, 'SIGKILL');
    await end(driver);
    await forgetClock(driver);
    throw error;
  }
}

class Session {
  #address;
  #driver;

  constructor(address, driver) {
    this.#address = address;
    this.#driver = driver;
  }

  title() {
    return call(`${this.#address}/title`, 'GET');
  }

  /** Runs the body of an async function in the page and gives what it returns. */
  async run(body, ...values) {
    const script = `const done = arguments[arguments.length - 1]; const values = [...arguments].slice(0, -1);
      (async (...values) => { ${body} })(...values).then((value) => done({ value }), (error) => done({ error: String(error) }));`;
    const { value, error } = await call(`${this.#address}/execute/async`, 'POST', { script, args: values });
    if (error !== undefined) throw new Error(error);
    return value;
  }

  /** What an expression in the page comes to. */
  read(expression, patience = PATIENCE) {
    return call(`${this.#address}/execute/sync`, 'POST', { script: `return ${expression};`, args: [] }, patience);
  }

  /** Waits until the condition, an expression in the page, holds. */
  waitFor(condition) {
    return until(condition, () => this.read(`Boolean(${condition})`));
  }

  /** Presses the first button whose words match, as soon as it is there. */
  async press(words) {
    const found = `[...document.querySelectorAll('button')].find((button) => ${words}.test(button.textContent) && !button.disabled)`;
    await this.waitFor(found);
    await this.run(`${found}.click();`);
  }

  async quit() {
    try {
      await call(this.#address, 'DELETE');
    } finally {
      await end(this.#driver);
      await forgetClock(this.#driver);
    }
  }
}

async function call(address, method, body, patience = PATIENCE) {
  const answer = await fetch(address, {
    method,
    body: body === undefined ? undefined : JSON.stringify(body),
    signal: AbortSignal.timeout(patience),
  }).catch((error) => {
    throw new Error(`${method} ${address}: ${error.message}`, { cause: error });
  });
  const { value } = await answer.json();
  if (!answer.ok) throw new Error(`${method} ${address}: ${value.error}: ${value.message}`);
  return value;
}

const isUnanswered = (error) => error.cause?.name === 'TimeoutError';

/** Asks again and again until the answer is yes. */
async function until(what, ask) {
  const begun = performance.now();
  while (!(await ask())) {
    if (performance.now() > begun + PATIENCE) throw new Error(`waited in vain: ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

async function freePort() {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address();
  server.close();
  await once(server, 'close');
  return port;
}

async function end(child) {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill('SIGTERM');
  await gone;
}

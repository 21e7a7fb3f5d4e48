// The service worker: keeps the app for offline use, and offers an update instead of forcing it.

class Offline {
  /** A newer version waits. */
  updateReady = $state(false);
  /** Everything is kept: the app opens without a network. */
  kept = $state(false);
  #waiting: ServiceWorker | null = null;

  offer(worker: ServiceWorker) {
    this.#waiting = worker;
    this.updateReady = true;
  }

  /** Takes the newer version; the page opens again with it. */
  update() {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    this.#waiting?.postMessage({ type: 'SKIP_WAITING' });
  }
}

export const offline = new Offline();

/** Registers the worker, where there is one: not in the app's own window, not while developing. */
export async function keepForOffline() {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator) || '__TAURI_INTERNALS__' in window) return;
  try {
    const registration = await navigator.serviceWorker.register('./sw.js');
    if (registration.waiting && navigator.serviceWorker.controller) offline.offer(registration.waiting);
    registration.addEventListener('updatefound', () => watch(registration.installing));
    await navigator.serviceWorker.ready;
    offline.kept = true;
  } catch {
    // Without a worker (private window, no storage) the app works while it is open.
    offline.kept = false;
  }
}

function watch(worker: ServiceWorker | null) {
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && navigator.serviceWorker.controller) offline.offer(worker);
  });
}

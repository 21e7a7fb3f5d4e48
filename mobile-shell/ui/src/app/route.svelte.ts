// Where the reader is: `#/plan/job/7?days=14`. The browser's own history keeps Back and deep links working.

const HOME = '#/today';

function read(hash: string): { path: string[]; query: URLSearchParams; hash: string } {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?');
  return { path: path.split('/').filter(Boolean).map(decode), query: new URLSearchParams(query), hash: hash || HOME };
}

/** A mark from an address that somebody typed may be badly encoded; then it is taken as it stands. */
function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** An address inside the app from its parts: `to('plan', 'job', mark)`. */
export function to(...parts: string[]): string {
  return '#/' + parts.map(encodeURIComponent).join('/');
}

class Route {
  #now = $state.raw(read(location.hash));
  /** Addresses visited on the way here, so that *up* can go back instead of piling up history. */
  #trail: string[] = [location.hash || HOME];

  constructor() {
    addEventListener('hashchange', () => this.#arrive());
  }

  get path(): string[] {
    return this.#now.path;
  }
  get query(): URLSearchParams {
    return this.#now.query;
  }
  get hash(): string {
    return this.#now.hash;
  }

  go(hash: string) {
    location.hash = hash;
  }

  /** Shows another address in place of this one: Back does not return here. */
  replace(hash: string) {
    if (hash === this.#now.hash) return;
    history.replaceState(null, '', hash);
    this.#trail[this.#trail.length - 1] = hash;
    this.#now = read(hash);
  }

  /** Leaves a page for the one above it. */
  up(parent: string) {
    const before = this.#trail.at(-2);
    if (before?.split('?')[0] === parent) history.back();
    else this.replace(parent);
  }

  #arrive() {
    const hash = location.hash || HOME;
    const before = this.#trail.at(-2);
    if (before === hash) this.#trail.pop();
    else this.#trail.push(hash);
    this.#now = read(hash);
  }
}

export const route = new Route();

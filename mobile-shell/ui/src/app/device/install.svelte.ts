// Putting the app on the home screen, where the browser offers it.

interface InstallOffer extends Event {
  prompt(): Promise<void>;
}

/** By which button of the browser the way to the home screen goes. */
export type HomeScreenBy = 'share' | 'menu';

/** Which it is on this phone, as far as its browser tells: a tablet that calls itself a laptop has more than one finger. */
export function homeScreenBy(agent = navigator.userAgent, fingers = navigator.maxTouchPoints): HomeScreenBy {
  return /iPhone|iPad|iPod/.test(agent) || (agent.includes('Macintosh') && fingers > 1) ? 'share' : 'menu';
}

/** The address that what was entered belongs to, as one reads it. */
export const atThisAddress = () => `${location.origin}${location.pathname}`.replace(/\/(index\.html)?$/, '');

class Install {
  /** It was opened from the home screen. */
  onHomeScreen = $state(matchMedia('(display-mode: standalone)').matches);
  offered = $state(false);
  #offer: InstallOffer | null = null;

  constructor() {
    addEventListener('beforeinstallprompt', (event) => {
      event.preventDefault();
      this.#offer = event as InstallOffer;
      this.offered = true;
    });
    addEventListener('appinstalled', () => (this.offered = false));
    matchMedia('(display-mode: standalone)').addEventListener('change', ({ matches }) => (this.onHomeScreen = matches));
  }

  async ask() {
    await this.#offer?.prompt();
    this.offered = false;
  }
}

export const install = new Install();

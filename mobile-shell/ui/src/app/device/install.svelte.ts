// Putting the app on the home screen, where the browser offers it.

interface InstallOffer extends Event {
  prompt(): Promise<void>;
}

class Install {
  offered = $state(false);
  #offer: InstallOffer | null = null;

  constructor() {
    addEventListener('beforeinstallprompt', (event) => {
      event.preventDefault();
      this.#offer = event as InstallOffer;
      this.offered = true;
    });
    addEventListener('appinstalled', () => (this.offered = false));
  }

  async ask() {
    await this.#offer?.prompt();
    this.offered = false;
  }
}

export const install = new Install();

/**
 * What the service worker has in store: whether the page opens without a network, and whether a newer version waits. A
 * newer version takes over all windows at once, so that none runs half of one and half of the other.
 */
const hour = 3_600_000;

/** The part of navigator.serviceWorker that is needed here. */
type Container = Pick<ServiceWorkerContainer, 'register' | 'ready' | 'controller' | 'addEventListener'>;

export class Updates {
  /** All files lie on this machine. */
  kept = $state(false);
  /** A newer version lies ready beside the one in use. */
  waiting = $state.raw<ServiceWorker | null>(null);
  /** The browser keeps no pages, as in a private window. */
  barred = $state(false);
  /** A newer version is in use elsewhere, and this window still shows the old one. */
  overtaken = $state(false);
  /** Whether this window could be loaded anew without losing anything. */
  safe = true;

  readonly #container: Container;
  readonly #reload: () => void;

  constructor(container: Container, reload: () => void) {
    this.#container = container;
    this.#reload = reload;
  }

  async begin(): Promise<void> {
    try {
      this.#watch(await this.#container.register('sw.js', { updateViaCache: 'none' }));
    } catch {
      // Without a network and with the worker in place this fails as well, and nothing is lost by it.
      this.barred = this.#container.controller === null;
    }
  }

  #watch(registration: ServiceWorkerRegistration): void {
    void this.#container.ready.then(() => (this.kept = true));
    if (registration.waiting) this.waiting = registration.waiting;
    registration.addEventListener('updatefound', () => this.#follow(registration.installing));
    this.#follow(registration.installing);
    // The first worker of all takes over nothing: this window came whole from the server.
    if (this.#container.controller)
      this.#container.addEventListener('controllerchange', () => this.#changed());
    // A window that stays open for weeks is to hear of updates, too.
    setInterval(() => void registration.update().catch(() => undefined), hour);
  }

  /** Puts the newer version to use; the window is loaded anew once it is there. */
  use(): void {
    this.waiting?.postMessage('take over');
  }

  #follow(worker: ServiceWorker | null): void {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && this.#container.controller) this.waiting = worker;
      else if (worker === this.waiting) this.waiting = null;
    });
  }

  #changed(): void {
    this.waiting = null;
    if (this.safe) this.#reload();
    else this.overtaken = true;
  }
}

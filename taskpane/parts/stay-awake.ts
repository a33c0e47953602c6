import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Keeps the screen awake while its step is shown, since hands that weigh out are wet. Where the browser can't, or the
 * host forbids it, the screen goes dark as ever and nothing is said.
 */
export class StayAwake implements ReactiveController {
  private lock: WakeLockSentinel | undefined;
  private isShown = false;

  constructor(host: ReactiveControllerHost) {
    host.addController(this);
  }

  hostConnected(): void {
    this.isShown = true;
    document.addEventListener('visibilitychange', this.ask);
    this.ask();
  }

  hostDisconnected(): void {
    this.isShown = false;
    document.removeEventListener('visibilitychange', this.ask);
    this.release();
  }

  /** A page that is left loses its lock, and asks again when it is looked at again. */
  private readonly ask = (): void => {
    if (document.hidden || !('wakeLock' in navigator)) return;
    navigator.wakeLock.request('screen').then(
      (lock) => {
        this.release();
        this.lock = lock;
        if (!this.isShown) this.release();
      },
      () => undefined,
    );
  };

  private release(): void {
    this.lock?.release().catch(() => undefined);
    this.lock = undefined;
  }
}

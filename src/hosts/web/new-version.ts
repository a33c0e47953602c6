import type { Saver } from '../workbench/page/saver.ts';
import { button, createNotice } from './screen/elements.ts';
import { isOnlyPage } from './tabs/hold.ts';
import { TAKE_IN } from './take-in.ts';

/**
 * Has the browser keep the page for when there is no line. A new version that waits comes in at once while nothing is
 * open yet and no other tab is: resolves with true where the page then loads anew.
 */
export async function keepPageOffline(): Promise<boolean> {
  const known = await navigator.serviceWorker.getRegistration();
  if (known?.waiting && (await isOnlyPage())) {
    await takeIn(known.waiting);
    return true;
  }
  // Without it the page still works while its host is reached.
  void navigator.serviceWorker
    .register('service-worker.js', { updateViaCache: 'none' })
    .catch(() => undefined);
  return false;
}

/** Says when a new version waits, and takes it in when the maker says so and all is saved. */
export function offerNewVersion(saver: Saver, letGo: () => void): void {
  const notice = createNotice();
  const take = async (waiting: ServiceWorker) => {
    const answer = await saver.saveNow();
    if (answer.kind !== 'saved') return;
    if (!(await isOnlyPage())) {
      notice(
        CLOSE_OTHERS,
        button('Take it in now', () => take(waiting)),
      );
      return;
    }
    letGo();
    await takeIn(waiting);
  };
  const offer = (waiting: ServiceWorker) => {
    notice(
      IS_HERE,
      button('Take it in now', () => take(waiting)),
    );
  };
  void navigator.serviceWorker.ready.then((registration) => {
    const look = () => {
      if (registration.waiting) offer(registration.waiting);
    };
    registration.addEventListener('updatefound', () => {
      registration.installing?.addEventListener('statechange', look);
    });
    look();
  });
}

const IS_HERE =
  'A new version of Pour Ledger is here. It comes in when you say so, or when you next open the page.';
const CLOSE_OTHERS = 'Close the other tabs of Pour Ledger first: one version serves them all.';

/** Lets the waiting version in, then loads the page anew. */
function takeIn(waiting: ServiceWorker): Promise<void> {
  return new Promise((resolve) => {
    navigator.serviceWorker.addEventListener('controllerchange', () => {
      location.reload();
      resolve();
    });
    waiting.postMessage(TAKE_IN);
  });
}

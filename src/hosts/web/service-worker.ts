import { cleanupOutdatedCaches, precacheAndRoute, type PrecacheEntry } from 'workbox-precaching';
import { TAKE_IN } from './take-in.ts';

/** What of a service worker's own scope is used; TypeScript's types here are a page's. */
interface ServiceWorkerScope {
  readonly __WB_MANIFEST: (string | PrecacheEntry)[];
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(
    kind: 'activate' | 'message',
    listener: (event: MessageEvent & { waitUntil(work: Promise<unknown>): void }) => void,
  ): void;
}
declare const self: ServiceWorkerScope;

// The build puts the page's files and their hashes here (src/build/web.ts); nothing else is answered or fetched.
precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();
self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim());
});
self.addEventListener('message', (event) => {
  // Never by itself, since work may be under way.
  if (event.data === TAKE_IN) event.waitUntil(self.skipWaiting());
});

/** What a page says to the service worker when the new version may come in. */
export const TAKE_IN = 'take in the new version';

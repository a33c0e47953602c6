/** How long the page may be busy before what waits is begun all the same. */
const LONGEST_WAIT_MS = 1_000;

/** Resolves once the page has drawn and has nothing else to do; Safari can't tell, and draws first. */
export const whenIdle = (): Promise<void> =>
  new Promise((resolve) => {
    requestAnimationFrame(() => {
      const later = () => {
        resolve();
      };
      if ('requestIdleCallback' in window) {
        requestIdleCallback(later, { timeout: LONGEST_WAIT_MS });
      } else setTimeout(later);
    });
  });

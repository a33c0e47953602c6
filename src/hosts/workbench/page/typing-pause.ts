/** How long after the last keystroke a hand edit is saved, in milliseconds. */
const TYPING_PAUSE_MS = 800;

/** How long typing, and formulas that don't come to rest over it, may keep cells from the file. */
export const LONGEST_WAIT_MS = 5_000;

/** Waits for a pause after what was set last, but never past the longest wait after the first. */
export function createPause() {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let latest = 0;
  return {
    set(run: () => void) {
      const now = Date.now();
      if (timer === undefined) latest = now + LONGEST_WAIT_MS;
      clearTimeout(timer);
      timer = setTimeout(run, Math.max(0, Math.min(TYPING_PAUSE_MS, latest - now)));
    },
    clear() {
      clearTimeout(timer);
      timer = undefined;
    },
  };
}

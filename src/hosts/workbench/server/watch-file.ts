import { watch } from 'node:fs';
import { basename, dirname } from 'node:path';

/** Looking again now and then covers folders (on a network) whose changes are not announced. */
const LOOK_AGAIN_MS = 5_000;

/**
 * Calls `look` whenever the file may have changed. The folder is watched, since most programs save
 * by putting a new file in the old one's place. Returns the way to stop.
 */
export function watchFile(path: string, look: () => void): () => void {
  const name = basename(path);
  const watcher = watch(dirname(path), (_event, changed) => {
    if (changed === null || changed === name) look();
  });
  watcher.on('error', () => {
    // The folder went away; the timer still looks.
    watcher.close();
  });
  const timer = setInterval(look, LOOK_AGAIN_MS);
  timer.unref();
  return () => {
    watcher.close();
    clearInterval(timer);
  };
}

import { watch } from 'node:fs';
import { basename, dirname } from 'node:path';
import type { Occasion } from './tell-of-file.ts';

/** Looking again now and then covers folders (on a network) whose changes are not announced. */
const LOOK_AGAIN_MS = 5_000;

/**
 * Calls `look` whenever the file may have changed. The folder is watched, since most programs save
 * by putting a new file in the old one's place. Returns the way to stop.
 */
export function watchFile(path: string, look: (occasion: Occasion) => void): () => void {
  const name = basename(path);
  const watcher = watch(dirname(path), (_event, changed) => {
    if (changed === null || changed === name) look('move');
  });
  watcher.on('error', () => {
    // The folder went away; the timer still looks.
    watcher.close();
  });
  const timer = setInterval(look, LOOK_AGAIN_MS, 'clock');
  timer.unref();
  return () => {
    watcher.close();
    clearInterval(timer);
  };
}

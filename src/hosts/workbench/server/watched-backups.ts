import { basename } from 'node:path';
import { readWorkbook } from '../../../xlsx/read/read-workbook.ts';
import { versionOf } from '../../../xlsx/version.ts';
import type { BackupNews } from '../protocol.ts';
import type { Backup } from './backups.ts';
import type { FileSteps } from './file-steps.ts';

/**
 * The states that this server replaced last. A program that had the file open when the two changed places still has
 * the old one, and saves into a backup without knowing it.
 */
export interface WatchedBackups {
  /** A state just replaced, which held these bytes then. */
  add(backup: Backup, bytes: Uint8Array): void;
  /** Looks at all of them. */
  look(): Promise<BackupNews>;
  /** What was written into the backup of that time is settled: no more is said of it. */
  settle(until: number): void;
}

/** As many as always stay. */
const MOST = 10;

interface Watched extends Backup {
  /** What it held when it was replaced, or what the maker has settled since. */
  known: string;
  /** What it held when it was last looked at. */
  held: string;
  /** Its mark then. */
  mark?: string;
  /** Its mark when it was found to be no workbook. */
  broken?: string;
}

export function watchedBackups(steps: FileSteps): WatchedBackups {
  let watched: Watched[] = [];
  return {
    add(backup, bytes) {
      const version = versionOf(bytes);
      watched = [{ ...backup, known: version, held: version }, ...watched].slice(0, MOST);
    },
    async look() {
      for (const one of watched) await lookAt(steps, one);
      const written = watched.find(({ held, known }) => held !== known);
      if (written === undefined) return { kind: 'backups' };
      const { time: until, path } = written;
      return { kind: 'backups', writtenInto: { until, path } };
    },
    settle(until) {
      for (const one of watched) if (one.time === until) one.known = one.held;
    },
  };
}

async function lookAt(steps: FileSteps, one: Watched): Promise<void> {
  try {
    // Before its bytes: what is written in between has another mark.
    const { mark } = await steps.look(one.path);
    if (mark === one.mark) return;
    const bytes = await steps.read(one.path);
    const isWhole =
      versionOf(bytes) === one.known || readWorkbook(bytes, basename(one.path)).kind === 'read';
    // A program that is just writing it will have finished by the next look; what stays broken counts as written.
    if (!isWhole && one.broken !== mark) {
      one.broken = mark;
      return;
    }
    one.mark = mark;
    one.held = versionOf(bytes);
  } catch {
    // It is gone: there is nothing in it to lose.
    one.held = one.known;
  }
}

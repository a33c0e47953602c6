import { join } from 'node:path';
import type { TextsToKeep } from '../protocol.ts';
import { isRecord } from '../../../domain/kernel/is-record.ts';
import { readOwn, writeOwn } from './own-file.ts';

/** The pane's texts for one workbook: its drafts, and what it was about to write. */
export interface TextsOnDisk {
  all(): Readonly<Record<string, string>>;
  /** Resolves once they are on the disk; rejects where they could not be put there. */
  keep(texts: TextsToKeep): Promise<void>;
}

/** Reads what is kept in a ledger's folder; what can't be read is begun anew. */
export async function keptTexts(folder: string): Promise<TextsOnDisk> {
  const file = join(folder, 'texts.json');
  const known = await readOwn(file);
  const texts = new Map(
    Object.entries(isRecord(known) ? known : {}).filter(
      (entry): entry is [string, string] => typeof entry[1] === 'string',
    ),
  );
  let last: Promise<unknown> = Promise.resolve();
  return {
    all: () => Object.fromEntries(texts),
    keep(wanted) {
      for (const [key, text] of Object.entries(wanted)) {
        if (text === null) texts.delete(key);
        else texts.set(key, text);
      }
      const next = last.then(() => writeOwn(file, JSON.stringify(Object.fromEntries(texts))));
      last = next.catch(() => undefined);
      return next;
    },
  };
}

/** Reads a request's JSON text; undefined when it holds anything but texts. */
export function parseTexts(text: string): TextsToKeep | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return isRecord(value) && Object.values(value).every(isTextOrNull)
      ? (value as TextsToKeep)
      : undefined;
  } catch {
    return undefined;
  }
}

const isTextOrNull = (value: unknown): boolean => value === null || typeof value === 'string';

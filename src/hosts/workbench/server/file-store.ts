import { basename } from 'node:path';
import type { SaveAnswer, SaveRequest, SheetEdits } from '../../xlsx/image.ts';
import { patchWorkbook } from '../../xlsx/patch/patch-workbook.ts';
import { readWorkbook, type WorkbookRead } from '../../xlsx/read/read-workbook.ts';
import type { Refused } from '../../xlsx/refusal.ts';
import { missingEdit } from '../../xlsx/verify.ts';
import { versionOf } from '../../xlsx/version.ts';
import { fileSentence } from './file-sentence.ts';
import { nodeFileSteps, type FileSteps } from './file-steps.ts';
import { replaceFile } from './replace-file.ts';

/** One workbook file: read, saved and watched, one thing at a time. */
export interface FileStore {
  read(): Promise<WorkbookRead | Refused>;
  save(request: SaveRequest): Promise<SaveAnswer>;
  /** The file's version if it was changed by someone else since we last read, saved or asked. */
  changedOutside(): Promise<string | undefined>;
  /** Resolves when nothing is under way. */
  idle(): Promise<void>;
}

/** Opens a store on a file; `steps` are the file system's, and `now` gives the milliseconds since 1970. */
export function fileStore(
  path: string,
  steps: FileSteps = nodeFileSteps,
  now: () => number = Date.now,
): FileStore {
  let known: string | undefined;
  /** The workbook as last read or saved, so that opening it again need not take it apart again. */
  let newest: WorkbookRead | undefined;
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };

  const read = async (): Promise<WorkbookRead | Refused> => {
    const answer = await readOver(steps, path, newest);
    if (answer.kind === 'refused') return answer;
    newest = answer;
    known = answer.workbook.version;
    return answer;
  };

  const save = async (request: SaveRequest): Promise<SaveAnswer> => {
    const { answer, read: readBack } = await saveOver(steps, path, request, now());
    if (answer.kind !== 'saved') return answer;
    newest = readBack;
    known = answer.version;
    return answer;
  };

  const changedOutside = async (): Promise<string | undefined> => {
    const bytes = await steps.read(path).catch(() => undefined);
    const version = bytes && versionOf(bytes);
    if (bytes === undefined || version === undefined || version === known) return undefined;
    // Gone or half written: whoever writes it will finish, and the next look will see it.
    if (known === undefined || readWorkbook(bytes, '').kind === 'refused') return undefined;
    known = version;
    return version;
  };

  return {
    read: () => inTurn(read),
    save: (request) => inTurn(() => save(request)),
    changedOutside: () => inTurn(changedOutside),
    idle: async () => {
      await last;
    },
  };
}

async function readOver(
  steps: FileSteps,
  path: string,
  newest: WorkbookRead | undefined,
): Promise<WorkbookRead | Refused> {
  try {
    const bytes = await steps.read(path);
    return newest?.workbook.version === versionOf(bytes)
      ? newest
      : readWorkbook(bytes, basename(path));
  } catch (error) {
    return { kind: 'refused', sentence: fileSentence(error, path) };
  }
}

interface Saved {
  readonly answer: SaveAnswer;
  /** The saved file, read back. */
  readonly read?: WorkbookRead;
}

async function saveOver(
  steps: FileSteps,
  path: string,
  { baseVersion, edits }: SaveRequest,
  now: number,
): Promise<Saved> {
  try {
    const current = await steps.read(path);
    const version = versionOf(current);
    if (version !== baseVersion) return { answer: { kind: 'changed outside', version } };
    const next = prepared(current, edits, basename(path));
    if (next.kind === 'refused') return { answer: next };
    const replaced = await replaceFile(steps, path, current, next.bytes, now);
    if (replaced.kind === 'changed outside') return { answer: replaced };
    return { answer: { kind: 'saved', version: next.read.workbook.version }, read: next.read };
  } catch (error) {
    return { answer: { kind: 'refused', sentence: fileSentence(error, path) } };
  }
}

interface Prepared {
  readonly kind: 'prepared';
  readonly bytes: Uint8Array;
  readonly read: WorkbookRead;
}

/** The patched bytes, read back and compared with what was asked. */
function prepared(
  current: Uint8Array,
  edits: readonly SheetEdits[],
  fileName: string,
): Prepared | Refused {
  const patched = patchWorkbook(current, edits);
  if (patched.kind === 'refused') return patched;
  const read = readWorkbook(patched.bytes, fileName);
  const wrong = read.kind === 'refused' ? read.sentence : missingEdit(read.workbook, edits);
  if (read.kind === 'read' && wrong === undefined) {
    return { kind: 'prepared', bytes: patched.bytes, read };
  }
  return {
    kind: 'refused',
    sentence: `Nothing was saved: on checking the new file, ${wrong ?? ''}. Your file is as it was.`,
  };
}

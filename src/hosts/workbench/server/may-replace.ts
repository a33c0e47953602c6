import { basename, dirname, join } from 'node:path';
import { FileRefused } from './file-sentence.ts';
import { codeOf, type FileFacts, type FileSteps } from './file-steps.ts';

/** Throws `FileRefused`, with what to do, for a file that replacing would change in kind or take from its owner. */
export function refuseWhatReplacingBreaks(path: string, facts: FileFacts): void {
  const name = `"${basename(path)}"`;
  if (facts.kind === 'link') {
    throw new FileRefused(
      `${name} is now a link to another file, so nothing was saved. Open the file that it leads to.`,
    );
  }
  if (facts.kind === 'other') {
    throw new FileRefused(`${name} is no plain file any more, so nothing was saved.`);
  }
  if (!facts.isWritable) {
    throw new FileRefused(
      `${name} is read-only, so nothing was saved. Allow writing to it and save again, or open a copy of it.`,
    );
  }
  if (facts.names > 1) {
    throw new FileRefused(
      `${name} stands under a second name too (a hard link), and saving would part the two, so nothing was saved. Open a copy of it.`,
    );
  }
}

/** Throws `FileRefused` when the file that would take the place of `last` is another's, or open to others. */
export function refuseOtherOwner(path: string, last: FileFacts, next: FileFacts): void {
  const keys = ['owner', 'group', 'mode'] as const;
  if (keys.every((key) => last[key] === next[key])) return;
  throw new FileRefused(
    `"${basename(path)}" belongs to another user or group, and after saving it would be yours, so nothing was saved. Open a copy of it.`,
  );
}

/** Throws `FileRefused` while another program says, by the file that such programs leave beside it, that it has it open. */
export async function refuseWhileOpenElsewhere(steps: FileSteps, path: string): Promise<void> {
  for (const [lock, whoIn] of lockFiles(basename(path))) {
    const bytes = await readIfThere(steps, join(dirname(path), lock));
    if (bytes === undefined) continue;
    const who = whoIn(Buffer.from(bytes)).trim();
    const by = who === '' ? '' : ` (${who})`;
    throw new FileRefused(
      `"${basename(path)}" is open in another program${by}, so nothing was saved. Close it there and save again. If it is open nowhere, delete the file "${lock}" beside it.`,
    );
  }
}

/** The files by which other programs say that a workbook is open in them, and how they name who has it. */
const lockFiles = (name: string): readonly (readonly [string, (bytes: Buffer) => string])[] => [
  [`.~lock.${name}#`, ofFields],
  [`~$${name}`, ofCountedText],
];

/** LibreOffice: name, account, computer, day and time, profile. */
function ofFields(bytes: Buffer): string {
  const [name = '', account = '', computer = '', since = ''] = bytes.toString('utf8').split(',');
  const who = [name || account, computer && `on ${computer}`].filter(Boolean).join(' ');
  return [who, since && `since ${since}`].filter(Boolean).join(', ');
}

/** Excel: a byte with the name's length, then the name. */
const ofCountedText = (bytes: Buffer): string =>
  bytes.subarray(1, 1 + Math.min(bytes[0] ?? 0, 54)).toString('latin1');

async function readIfThere(steps: FileSteps, path: string): Promise<Uint8Array | undefined> {
  try {
    return await steps.read(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    // It stands there and can't be read: it still says that someone has the workbook open.
    return new Uint8Array();
  }
}

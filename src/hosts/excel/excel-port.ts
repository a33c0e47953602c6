import type { HostPort } from '../../workbook/port.ts';
import { browserFiles } from '../files/browser-files.ts';
import { applyChange, type Run } from './apply-change.ts';
import { brokenNames } from './broken-names.ts';
import { sentenceOfFault } from './host-fault.ts';
import { openAsNew } from './open-as-new.ts';
import { readTables } from './read-tables.ts';
import { workbookMemory } from './workbook-memory.ts';

/** What the port takes from around it, so that tests can stand in for Excel. */
export interface ExcelSurroundings {
  readonly run: Run;
  /** Runs a batch once no cell is being edited any more: for what nobody waits for. */
  readonly runLater: Run;
  /** Tells this workbook from others: its address, or "" before the first save. */
  readonly workbookKey: string;
  readonly store: Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;
  readonly isReadOnly: () => boolean;
  readonly now: () => Date;
  /** Hears, as a sentence, that changes by others' hands will not be noticed. */
  readonly onDeaf: (sentence: string) => void;
}

/** The workbook open in Excel, as the pane sees it. What reads rejects with a sentence. */
export function excelPort(around: ExcelSurroundings): HostPort {
  return {
    load: () => readTables(around.run).catch(throwSentence),
    apply: async (change) =>
      around.isReadOnly()
        ? {
            kind: 'refused',
            sentence:
              'This workbook is open read-only, so nothing would be kept. Choose Edit Workbook or save your own copy, then try again.',
          }
        : applyChange(around.run, change),
    onChange: (listener) => watchTables(around, listener),
    files: browserFiles(openAsNew),
    brokenNames: () => brokenNames(around.run).catch(throwSentence),
    memory: workbookMemory(around.store, around.workbookKey),
    today: () => isoDate(around.now()),
    newToken,
    // Excel does not tell an add-in who is signed in.
    userName: () => '',
  };
}

function throwSentence(problem: unknown): never {
  throw new Error(sentenceOfFault(problem), { cause: problem });
}

function watchTables({ runLater, onDeaf }: ExcelSurroundings, listener: () => void): () => void {
  let stopped = false;
  const registration = runLater(async (context) => {
    const handler = context.workbook.tables.onChanged.add(async () => {
      if (!stopped) listener();
    });
    await context.sync();
    return handler;
  }).catch((problem: unknown) => {
    onDeaf(sentenceOfFault(problem));
    return undefined;
  });

  return () => {
    stopped = true;
    registration
      .then(async (handler) => {
        handler?.remove();
        await handler?.context.sync();
      })
      // Excel may go on telling; nobody listens any more.
      .catch(() => undefined);
  };
}

function isoDate(when: Date): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}`;
}

/** 50 random bits as ten letters and digits that are hard to misread. */
function newToken(): string {
  const letters = '0123456789abcdefghjkmnpqrstvwxyz';
  const bytes = crypto.getRandomValues(new Uint8Array(10));
  return Array.from(bytes, (byte) => letters[byte % letters.length]).join('');
}

import type { HostPort, TableData } from '../../workbook/port.ts';
import { browserFiles } from '../files/browser-files.ts';
import { inBrowser, memoryIn, type TextStore } from '../in-browser.ts';
import { applyChange, type Run } from './apply-change.ts';
import { brokenNames } from './broken-names.ts';
import { sentenceOfFault } from './host-fault.ts';
import { showPlace } from './show-place.ts';
import { openAsNew } from './open-as-new.ts';
import { readHostTables } from './read-tables.ts';

/** What the port takes from around it, so that tests can stand in for Excel. */
export interface ExcelSurroundings {
  readonly run: Run;
  /** Runs a batch once no cell is being edited any more: for what nobody waits for. */
  readonly runLater: Run;
  /** Tells this workbook from others: its address, or "" before the first save. */
  readonly workbookKey: string;
  readonly store: TextStore;
  readonly isReadOnly: () => boolean;
  readonly now: () => Date;
  /** Sees all tables whenever they were read. */
  readonly onRead: (tables: readonly TableData[]) => void;
  /** Hears, as a sentence, that changes by others' hands will not be noticed. */
  readonly onDeaf: (sentence: string) => void;
}

/** The workbook open in Excel, as the pane sees it. What reads rejects with a sentence. */
export function excelPort(around: ExcelSurroundings): HostPort {
  return {
    ...inBrowser(around.now),
    memory: memoryIn(around.store, `pour-ledger|${around.workbookKey}|`),
    load: async () => {
      const tables = await readHostTables(around.run).catch(throwSentence);
      around.onRead(tables);
      return tables;
    },
    apply: async (change) =>
      around.isReadOnly()
        ? {
            kind: 'refused',
            sentence:
              'This workbook is open read-only, so nothing would be kept. Choose Edit Workbook or save your own copy, then try again.',
          }
        : applyChange(around.run, change),
    onChange: (listener) => watchTables(around, listener),
    show: (place) => showPlace(around.run, place).catch(throwSentence),
    files: browserFiles(openAsNew),
    brokenNames: () => brokenNames(around.run).catch(throwSentence),
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

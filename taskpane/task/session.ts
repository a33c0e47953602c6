import type { Book } from '../../src/domain/book/book.ts';
import type { TableNames } from '../../src/workbook/find-tables.ts';
import type { Applied, Change, HostPort, TableData } from '../../src/workbook/port.ts';
import { onSheets } from '../../src/workbook/sheet-words.ts';
import { speakOf } from '../as-read.ts';
import { readTablesOf, type ToMend } from '../read-workbook.ts';

/** Where the pane stands with its workbook. */
export type BookState =
  | { readonly kind: 'reading' }
  | {
      readonly kind: 'ready';
      readonly book: Book;
      readonly names: TableNames;
      readonly tables: readonly TableData[];
    }
  /** The tables hold something to mend first, a sentence each. */
  | {
      readonly kind: 'unreadable';
      readonly findings: readonly ToMend[];
      readonly tables: readonly TableData[];
    }
  /** The host could not be read at all. */
  | { readonly kind: 'failed'; readonly sentence: string };

/** A workbook whose tables are in order. */
export type Ready = Extract<BookState, { kind: 'ready' }>;

/** How writing ended; `unsure` where the host broke off and may or may not have written. */
export type Written = Applied | { readonly kind: 'unsure'; readonly sentence: string };

/** Reads a host's workbook, now and whenever it changes, and writes to it: one thing at a time. */
export class Session {
  state: BookState = { kind: 'reading' };
  private readonly port: HostPort;
  private readonly listeners = new Set<() => void>();
  private readonly stopListening: () => void;
  private isWriting = false;
  private isStopped = false;
  private wanted = 0;
  private running: Promise<void> | undefined;
  private last: Promise<void> = Promise.resolve();

  constructor(port: HostPort) {
    this.port = port;
    this.stopListening = port.onChange(() => {
      // What we write ourselves is read once it is written whole.
      if (!this.isWriting) void this.read();
    });
  }

  /** Calls back whenever the workbook was read. Returns the way to stop. */
  onState(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => {
      this.listeners.delete(listener);
    };
  }

  /** Does a piece of work once all asked for before it is done: what it reads is not written meanwhile. */
  alone<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.last.then(work);
    this.last = mine.then(
      () => undefined,
      () => undefined,
    );
    return mine;
  }

  stop(): void {
    this.isStopped = true;
    this.stopListening();
  }

  /** Reads the workbook; calls made meanwhile share one more reading. */
  read(): Promise<void> {
    this.wanted += 1;
    this.running ??= this.readUntilCurrent().finally(() => {
      this.running = undefined;
    });
    return this.running;
  }

  /**
   * Writes a change, then reads what the workbook holds now. Nothing is written before what is kept of
   * it is safe: then the next opening tells how far it came, whatever ends the host meanwhile.
   */
  async write(change: Change): Promise<Written> {
    try {
      await this.port.memory.kept();
    } catch (problem) {
      return { kind: 'refused', sentence: sentenceOf(problem) };
    }
    this.isWriting = true;
    let written: Written;
    try {
      written = await this.port.apply(change);
    } catch (problem) {
      written = { kind: 'unsure', sentence: sentenceOf(problem) };
    }
    this.isWriting = false;
    await this.read();
    return written;
  }

  private async readUntilCurrent(): Promise<void> {
    for (let seen = 0; seen !== this.wanted;) {
      seen = this.wanted;
      const state = await readFrom(this.port, this.state);
      if (seen !== this.wanted || this.isStopped) continue;
      this.state = state;
      if (state.kind === 'ready') speakOf(onSheets(state.names, state.book));
      for (const listener of this.listeners) listener();
    }
  }
}

/** Reads the workbook; of what nobody changed since `before`, all that was worked out goes on to hold. */
async function readFrom(port: HostPort, before: BookState): Promise<BookState> {
  try {
    const tables = await port.load();
    if ('tables' in before && areSame(before.tables, tables)) return { ...before };
    const reading = readTablesOf(tables, before.kind === 'ready' ? before.book : undefined);
    return { ...reading, tables };
  } catch (problem) {
    return { kind: 'failed', sentence: sentenceOf(problem) };
  }
}

/** Whether tables hold the very same, cell for cell: looking is far quicker than reading them again. */
function areSame(one: readonly TableData[], other: readonly TableData[]): boolean {
  return isEqual(
    one,
    other,
    (a, b) =>
      a.name === b.name &&
      a.on?.sheet === b.on?.sheet &&
      a.on?.headerRow === b.on?.headerRow &&
      isEqual(a.headers, b.headers, Object.is) &&
      isEqual(a.rows, b.rows, (row, there) => isEqual(row, there, Object.is)),
  );
}

const isEqual = <T>(
  one: readonly T[],
  other: readonly T[],
  isSame: (a: T, b: T) => boolean,
): boolean =>
  one === other ||
  (one.length === other.length && one.every((part, at) => isSame(part, other[at] as T)));

function sentenceOf(problem: unknown): string {
  const said = problem instanceof Error ? problem.message : String(problem);
  return said === '' ? 'The workbook did not answer.' : said.replace(/\.?$/u, '.');
}

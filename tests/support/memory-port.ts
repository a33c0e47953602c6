import type {
  Applied,
  Change,
  CopyRead,
  HostPort,
  TableData,
  TablePlace,
  ValueWorkbook,
} from '../../src/workbook/port.ts';
import { withChange } from '../../src/workbook/write/with-change.ts';

/** What a test may want different of a workbook held in memory. */
export interface MemoryOptions {
  readonly today?: string;
  readonly userName?: string;
  /** Texts that `newToken` gives, in order; the last one goes on. */
  readonly tokens?: readonly string[];
  /** Where the pane's memory is kept; a map of its own if not given. */
  readonly memory?: HostPort['memory'];
}

/** A host over plain tables, with the faults and the outside hand that tests need. */
export interface MemoryPort extends HostPort {
  /** The tables as they stand now. */
  readonly tables: readonly TableData[];
  /** Changes that were really written. */
  readonly written: readonly Change[];
  /** Workbooks that were handed over. */
  readonly given: readonly ValueWorkbook[];
  /** Changes that were asked for. */
  readonly asked: readonly Change[];
  /** Cells that were brought before the maker's eyes. */
  readonly shown: readonly TablePlace[];
  /** Someone else edits the workbook; listeners are told. */
  edit(change: (tables: readonly TableData[]) => readonly TableData[]): void;
  /** The next apply ends this way. `breaks before` and `breaks after` throw without and with writing. */
  nextApply(fault: Fault): void;
  /** Holds every apply back until the returned function is called. */
  hold(): () => void;
}

export type Fault =
  | { readonly kind: 'refuses'; readonly sentence: string }
  | { readonly kind: 'breaks before' }
  | { readonly kind: 'breaks after' }
  /** Throws with only the first `rows` rows written. */
  | { readonly kind: 'breaks halfway'; readonly rows: number };

/** Makes a host of tables; what it writes is what a change means in tables of plain cells. */
export function createMemoryPort(
  start: readonly TableData[],
  options: MemoryOptions = {},
): MemoryPort {
  let tables = start;
  const written: Change[] = [];
  const asked: Change[] = [];
  const shown: TablePlace[] = [];
  const given: ValueWorkbook[] = [];
  const listeners = new Set<() => void>();
  const faults: Fault[] = [];
  let gate: Promise<void> = Promise.resolve();
  let tokens = [...(options.tokens ?? ['abcdefghkmnprstx'])];
  const put = (next: readonly TableData[]): void => {
    tables = next;
    for (const listener of listeners) listener();
  };
  const apply = (change: Change): Applied => {
    const fault = faults.shift();
    if (fault?.kind === 'refuses') return { kind: 'refused', sentence: fault.sentence };
    if (fault?.kind === 'breaks before') throw new Error('The connection was lost');
    const part = fault?.kind === 'breaks halfway' ? firstRows(change, fault.rows) : change;
    const { plan, tables: next } = withChange(tables, part);
    if (plan.kind === 'write') {
      written.push(change);
      put(next);
    }
    if (fault !== undefined) throw new Error('The connection was lost');
    return plan.kind === 'write' ? { kind: 'applied' } : plan;
  };
  return {
    get tables() {
      return tables;
    },
    written,
    given,
    asked,
    shown,
    edit: (change) => {
      put(change(tables));
    },
    nextApply: (fault) => {
      faults.push(fault);
    },
    hold() {
      let open = (): void => undefined;
      gate = new Promise((resolve) => {
        open = resolve;
      });
      return open;
    },
    load: () => Promise.resolve(tables),
    async apply(change) {
      asked.push(change);
      await gate;
      return apply(change);
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    show(place) {
      shown.push(place);
      return Promise.resolve();
    },
    files: {
      readTables: (bytes) => Promise.resolve(readTablesText(bytes)),
      give(workbook) {
        given.push(workbook);
        return Promise.resolve({ kind: 'given', sentence: `${workbook.fileName}.xlsx is here.` });
      },
    },
    brokenNames: () => Promise.resolve([]),
    memory: options.memory ?? memoryOf(new Map()),
    today: () => options.today ?? '2026-11-25',
    newToken() {
      const [first = '', ...rest] = tokens;
      if (rest.length > 0) tokens = rest;
      return first;
    },
    userName: () => options.userName ?? '',
  };
}

/** In memory a workbook's file is its tables as JSON; the hosts' own tests read real ones. */
function readTablesText(bytes: Uint8Array): CopyRead {
  try {
    const tables = JSON.parse(new TextDecoder().decode(bytes)) as readonly TableData[];
    return { kind: 'read', tables };
  } catch {
    return { kind: 'refused', sentence: 'This is not an .xlsx workbook.' };
  }
}

/** Text kept in a map. */
export function memoryOf(map: Map<string, string>): HostPort['memory'] {
  return {
    get: (key) => map.get(key),
    set: (key, value) => void map.set(key, value),
    delete: (key) => void map.delete(key),
    kept: () => Promise.resolve(),
  };
}

function firstRows(change: Change, count: number): Change {
  let left = count;
  const appends = change.appends.map((append) => {
    const rows = append.rows.slice(0, left);
    left -= rows.length;
    return { ...append, rows };
  });
  return { appends, updates: [] };
}

import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { runInNewContext } from 'node:vm';
import { asksThree, blanks } from './three-blanks.ts';

/** What the built functions throw in a spreadsheet: the host's own error, with its code and sentence. */
export class CellError {
  readonly code: string;
  readonly message: string;

  constructor(code: string, message?: string) {
    this.code = code;
    this.message = message ?? '';
  }
}

/** Calls a built worksheet function by its id with raw cell arguments. */
export type CallFunction = (id: string, ...cellArguments: readonly unknown[]) => unknown;

/**
 * The built functions in three hosts that hand blank cells over each in its own way: every call is made three times,
 * and its answers, or sentences, must be equal.
 */
export const loadFunctions = (): CallFunction => asksThree(blanks.map(() => loadOnce()));

/**
 * Loads dist/functions.js as a spreadsheet does (contract §6): a global to register with, and nothing
 * else. Each load has a memory of its own for books, and a page where it may leave something for other scripts.
 */
export function loadOnce(page: object = {}): CallFunction {
  const found = new Map<string, (...cellArguments: readonly unknown[]) => unknown>();
  const host = {
    associate: (id: string, fn: (...cellArguments: readonly unknown[]) => unknown) => {
      found.set(id, fn);
    },
    Error: CellError,
  };
  runInNewContext(builtScript(), Object.assign(page, { CustomFunctions: host }));
  return (id, ...cellArguments) => {
    const fn = found.get(id);
    if (fn === undefined) throw new Error(`dist/functions.js registers no function ${id}.`);
    return fn(...cellArguments);
  };
}

/** The error that a call ends in; fails where it answers, or throws anything else. */
export function errorOf(call: () => unknown): CellError {
  let answer: unknown;
  try {
    answer = call();
  } catch (problem) {
    if (problem instanceof CellError) return problem;
    throw problem;
  }
  throw new Error(`It answered ${JSON.stringify(answer)} and should have failed.`);
}

/** The numbers of a spill below its header, in the column with that header. */
export function column(spill: unknown, header: string): unknown[] {
  const [headers = [], ...rows] = spill as unknown[][];
  const at = headers.indexOf(header);
  if (at < 0) throw new Error(`The spill has no column ${header}: ${headers.join(', ')}.`);
  return rows.map((row) => row[at]);
}

function builtScript(): string {
  const file = fileURLToPath(new URL('../../dist/functions.js', import.meta.url));
  if (!existsSync(file))
    throw new Error('dist/functions.js is not there. Run "npm run build" first.');
  return readFileSync(file, 'utf8');
}

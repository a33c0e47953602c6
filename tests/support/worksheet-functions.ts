import { vi } from 'vitest';
import { asksThree, blanks } from './three-blanks.ts';

/** What the functions throw in a spreadsheet: the host's own error, with its code and sentence. */
export class CellError {
  readonly code: string;
  readonly message: string;

  constructor(code: string, message?: string) {
    this.code = code;
    this.message = message ?? '';
  }
}

/** Calls a worksheet function by its id with raw cell arguments. */
export type CallFunction = (id: string, ...cellArguments: readonly unknown[]) => unknown;

/**
 * The functions in three hosts that hand blank cells over each in its own way: every call is made three times,
 * and its answers, or sentences, must be equal.
 */
export async function loadFunctions(): Promise<CallFunction> {
  const hosts: CallFunction[] = [];
  while (hosts.length < blanks.length) hosts.push(await loadOnce());
  return asksThree(hosts);
}

/**
 * Registers the functions from source as functions.js does in a spreadsheet (contract §6). Each load has a memory of
 * its own for books; what the script leaves in the page for other scripts, it leaves in `globalThis`. One load at a
 * time. What tests/build/ holds the built script to.
 */
export async function loadOnce(): Promise<CallFunction> {
  const host = new HostOfFunctions();
  vi.resetModules();
  vi.stubGlobal('CustomFunctions', host);
  await import('../../src/hosts/excel/associate.ts');
  vi.unstubAllGlobals();
  return host.call;
}

/** The part of a spreadsheet that functions register with, and which calls them. */
export class HostOfFunctions {
  readonly Error = CellError;
  private readonly found = new Map<string, (...cellArguments: readonly unknown[]) => unknown>();

  associate(id: string, fn: (...cellArguments: readonly unknown[]) => unknown): void {
    if (this.found.has(id)) throw new Error(`${id} is associated twice.`);
    this.found.set(id, fn);
  }

  get ids(): string[] {
    return [...this.found.keys()].sort();
  }

  readonly call: CallFunction = (id, ...cellArguments) => {
    const fn = this.found.get(id);
    if (fn === undefined) throw new Error(`No function ${id} is registered.`);
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

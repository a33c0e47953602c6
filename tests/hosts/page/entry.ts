import { CellFailure } from '../../../functions/failure.ts';
import '../../../src/hosts/workbench/page/test-handle.ts';
import { openWorkbench } from '../../../src/hosts/workbench/page/open-workbench.ts';
import { createServerHome } from '../../../src/hosts/workbench/page/server-home.ts';
import type { HostPort } from '../../../src/workbook/port.ts';

/** A small invented record in place of the real functions: each shows one way across the adapter. */
const books = new Map<string, number>();
const functions = {
  BOOK(...ranges: unknown[]) {
    const rows = (ranges as unknown[][][]).reduce((sum, range) => sum + range.length, 0);
    const handle = `book of ${String(rows)}`;
    books.set(handle, rows);
    return handle;
  },
  ROWS(handle: unknown) {
    const rows = books.get(String(handle));
    if (rows === undefined) throw new CellFailure('#N/A', 'There is no such book in memory.');
    return rows;
  },
  TOTAL(quantities: unknown) {
    const cells = (Array.isArray(quantities) ? quantities.flat() : [quantities]) as unknown[];
    return cells.reduce<number>((sum, cell) => sum + (typeof cell === 'number' ? cell : 0), 0);
  },
  FAIL(name: unknown) {
    throw new CellFailure('#VALUE!', `There is no design called ${String(name)}.`);
  },
  LATER() {
    throw new CellFailure('#N/A', 'Nothing to answer with yet: record a batch first.');
  },
  SHARE(part: unknown, whole: unknown) {
    if (whole === 0) throw new CellFailure('#DIV/0!', 'The whole is nothing.');
    return Number(part) / Number(whole);
  },
  SEEN: (...args: unknown[]) =>
    JSON.stringify(args.map((arg) => (arg === undefined ? 'omitted' : arg))),
  LIST: () => [
    ['Colour', 'Tiles'],
    ['=A1', '25%'],
    ['', 7],
  ],
};

const makePane = (port: HostPort) => {
  const pane = document.createElement('test-pane') as HTMLElement & { port: HostPort };
  pane.port = port;
  pane.innerHTML = '<p>The pane stands here.</p><label>Note <input /></label>';
  return pane;
};

await openWorkbench(createServerHome, () => Promise.resolve({ functions, makePane }));

import '../../taskpane/index.ts';
import { browserFiles } from '../../src/hosts/files/browser-files.ts';
import { describeValues } from '../../src/hosts/files/value-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { createMemoryPort } from '../support/memory-port.ts';
import { workbooks } from './pane-tables.js';

/* global window, document, DataTransfer, File, Event -- runs in the page */

/** What pane.js asks of the page: a workbook to open the pane over, another copy to choose. */
const make = (name, moves) => workbooks[name](moves);
let pane;
let port;

window.bench = {
  prepare(name, moves) {
    pane?.remove();
    pane = document.createElement('pour-pane');
    port = createMemoryPort(make(name, moves), { today: '2028-02-15' });
    // Other workbooks are read and written as a browser does it.
    Object.assign(port, {
      files: browserFiles(() => Promise.resolve({ kind: 'given', sentence: 'The copy is here.' })),
    });
    pane.port = port;
  },
  open: () => document.body.append(pane),
  /** Somebody else types over the quantity of the newest use of a material. */
  edit: () =>
    port.edit((tables) =>
      tables.map((table) =>
        table.name === 'Moves'
          ? { ...table, rows: table.rows.with(-5, table.rows.at(-5).with(4, -7)) }
          : table,
      ),
    ),
  prepareFile(name, moves) {
    const sheets = make(name, moves).map(({ name: table, headers, rows }) => ({
      name: table,
      lines: [],
      table,
      columns: headers.map((header) => ({ header, format: 'text' })),
      rows,
    }));
    const bytes = writeWorkbook(
      describeValues({ fileName: 'other', title: 'Another copy', sheets }),
    );
    window.file = new File([bytes], 'other.xlsx');
  },
  choose(input) {
    const chosen = new DataTransfer();
    chosen.items.add(window.file);
    input.files = chosen.files;
    input.dispatchEvent(new Event('change'));
  },
};

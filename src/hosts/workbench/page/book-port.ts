import { nameKey } from '../../../domain/kernel/names.ts';
import type { Applied, Change, HostMemory, HostPort } from '../../../workbook/port.ts';
import {
  type CellToSet,
  type Plan,
  planChange,
  type RowToAdd,
} from '../../../workbook/write/plan-change.ts';
import { type PlainTable, plainTable } from '../../../workbook/write/with-change.ts';
import { idColumnsOf } from '../../../workbook/write/writable-table.ts';
import { browserFiles } from '../../files/browser-files.ts';
import { inBrowser } from '../../in-browser.ts';
import { download } from './download.ts';
import { bodyOf, type LiveTable, type LiveTables } from './live-tables.ts';
import type { CellPlace } from './places.ts';
import type { Saver } from './saver.ts';
import type { CellWrite, SheetCells } from './sheet-cells.ts';

/** What the port works on. */
export interface PortParts {
  readonly sheets: SheetCells;
  readonly tables: LiveTables;
  readonly saver: Saver;
  /** Selects a cell, ready to be typed in; brings the sheets first where they are not shown. */
  readonly select: (place: CellPlace) => Promise<void>;
  readonly memory: HostMemory;
  /** Names in the file that lead nowhere. */
  readonly brokenNames: readonly string[];
}

/** The pane's way to the workbook's cells; what it applies is in the file before it resolves. */
export function createBookPort(parts: PortParts): HostPort {
  const { sheets, tables } = parts;
  let queue: Promise<unknown> = Promise.resolve();
  return {
    ...inBrowser(() => new Date()),
    memory: parts.memory,
    load: () => Promise.resolve(tables.all().map((table) => tables.read(table))),
    apply(change) {
      const next = queue.then(() => applyOne(parts, change));
      queue = next.catch(() => undefined);
      return next;
    },
    onChange(listener) {
      let isOn = true;
      sheets.onEdit((cells) => {
        if (isOn && cells.some((cell) => tables.all().some((table) => isInside(table, cell)))) {
          listener();
        }
      });
      return () => {
        isOn = false;
      };
    },
    show({ table: name, row, header }) {
      const table = tables.all().find((known) => nameKey(known.name) === nameKey(name));
      if (table === undefined) return Promise.resolve();
      const { headers } = tables.image(table);
      const column = headers.findIndex((known) => nameKey(known) === nameKey(header ?? ''));
      return parts.select({
        sheetId: table.sheetId,
        row: table.range.startRow + row,
        column: table.range.startColumn + Math.max(0, column),
      });
    },
    files: browserFiles(download),
    brokenNames: () => Promise.resolve(parts.brokenNames),
  };
}

async function applyOne(parts: PortParts, change: Change): Promise<Applied> {
  const { sheets, tables, saver } = parts;
  if (saver.state.kind === 'changed outside') return refused(OUTSIDE);
  if (saver.state.kind === 'reads only') return refused(saver.state.sentence);
  if (saver.state.kind === 'not connected') return refused(NOT_CONNECTED);
  const plan = planIn(parts, change);
  if (plan.kind !== 'write') return plan;
  const growths = growthsOf(plan.rows);
  const blocked = growths.find(({ table, endRow }) => !isFreeBelow(sheets, table, endRow));
  if (blocked) {
    return refused(
      `The table ${blocked.table.name} cannot grow: the cells below it are not empty. ` +
        'Move what stands there, then try again.',
    );
  }
  const undo = sheets.write([...plan.cells.map(setCell), ...plan.rows.flatMap(addedCells)]);
  for (const { table, endRow } of growths) tables.resize(table.name, endRow);
  const answer = await saver.saveNow();
  if (answer.kind === 'saved') return { kind: 'applied' };
  for (const { table } of growths) tables.resize(table.name, table.range.endRow);
  undo();
  return refused(answer.kind === 'refused' ? answer.sentence : OUTSIDE);
}

const OUTSIDE =
  'The file was changed outside the workbench. Load the new version first; nothing was written.';

const NOT_CONNECTED =
  'The workbench does not answer. Start it again with the same workbook, then try again.';

const refused = (sentence: string): Applied => ({ kind: 'refused', sentence });

interface BookTable extends PlainTable {
  readonly live: LiveTable;
}

/** What the change means for the tables that it names, as they stand now. */
function planIn({ sheets, tables }: PortParts, change: Change): Plan<BookTable> {
  const named = idColumnsOf(change);
  const standing = tables
    .all()
    .filter(({ name }) => named.has(nameKey(name)))
    .map((live): BookTable => ({ ...plainTable(tables.read(live)), live }));
  return planChange(change, standing, {
    row: ({ rows }, at) => rows[at] ?? [],
    isFormula: ({ live }, at, column) =>
      sheets.read(placeIn(live, at, column)).formula !== undefined,
  });
}

/** The cell of a table by its body row and column. */
const placeIn = ({ sheetId, range }: LiveTable, at: number, column: number): CellPlace => ({
  sheetId,
  row: bodyOf(range).startRow + at,
  column: range.startColumn + column,
});

interface Growth {
  readonly table: LiveTable;
  readonly endRow: number;
}

/** How far down new rows take their tables. */
function growthsOf(rows: readonly RowToAdd<BookTable>[]): Growth[] {
  const last = new Map(rows.map(({ table: { live }, at }) => [live, placeIn(live, at, 0).row]));
  return [...last].flatMap(([table, endRow]) =>
    endRow > table.range.endRow ? [{ table, endRow }] : [],
  );
}

function isFreeBelow(sheets: SheetCells, { sheetId, range }: LiveTable, endRow: number): boolean {
  // One row more than needed: a filled row right below would look like part of the table.
  return sheets.isBlank(sheetId, { ...range, startRow: range.endRow + 1, endRow: endRow + 1 });
}

const setCell = ({ table, at, column, value }: CellToSet<BookTable>): CellWrite => ({
  ...placeIn(table.live, at, column),
  value,
});

/** Blank cells of a new row are left alone: nothing stands there. */
function addedCells({ table: { live }, at, cells }: RowToAdd<BookTable>): CellWrite[] {
  const { endRow } = live.range;
  return [...cells].flatMap(([column, value]) => {
    const place = placeIn(live, at, column);
    if (value === '') return [];
    return [{ ...place, value, ...(place.row > endRow ? { likeRow: endRow } : {}) }];
  });
}

const isInside = (
  { sheetId, range }: LiveTable,
  cell: { readonly sheetId: string; readonly row: number; readonly column: number },
): boolean =>
  cell.sheetId === sheetId &&
  cell.row >= range.startRow &&
  cell.row <= range.endRow &&
  cell.column >= range.startColumn &&
  cell.column <= range.endColumn;

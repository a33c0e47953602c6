import { nameKey } from '../../../domain/kernel/names.ts';
import type { Applied, Change, HostMemory, HostPort } from '../../../workbook/port.ts';
import { browserFiles } from '../../files/browser-files.ts';
import { inBrowser } from '../../in-browser.ts';
import { planOf, type PlannedWrite, type PlanTable } from './apply-plan.ts';
import { download } from './download.ts';
import type { CellWrite, Grid } from './grid.ts';
import { bodyOf, type LiveTable, type LiveTables } from './live-tables.ts';
import type { Place } from './places.ts';
import type { Saver } from './saver.ts';

/** What the port works on. */
export interface PortParts {
  readonly grid: Grid;
  readonly tables: LiveTables;
  readonly saver: Saver;
  /** Selects a cell, ready to be typed in. */
  readonly select: (place: Place) => void;
  readonly memory: HostMemory;
  /** Names in the file that lead nowhere. */
  readonly brokenNames: readonly string[];
}

/** The pane's way to the workbook in the grid; what it applies is in the file before it resolves. */
export function createUniverPort(parts: PortParts): HostPort {
  const { grid, tables } = parts;
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
      grid.onEdit((cells) => {
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
      if (table !== undefined) {
        const { headers } = tables.image(table);
        const column = headers.findIndex((known) => nameKey(known) === nameKey(header ?? ''));
        parts.select({
          sheetId: table.sheetId,
          row: table.range.startRow + row,
          column: table.range.startColumn + Math.max(0, column),
        });
      }
      return Promise.resolve();
    },
    files: browserFiles(download),
    brokenNames: () => Promise.resolve(parts.brokenNames),
  };
}

async function applyOne({ grid, tables, saver }: PortParts, change: Change): Promise<Applied> {
  if (saver.state.kind === 'changed outside') return refused(OUTSIDE);
  if (saver.state.kind === 'not connected') return refused(NOT_CONNECTED);
  const plan = planOf(
    tables.all().map((table) => planTable(grid, tables, table)),
    change,
  );
  if (plan.kind !== 'write') return plan;
  const growths = growthsOf(tables, plan.writes);
  const blocked = growths.find(({ table, endRow }) => !isFreeBelow(grid, table, endRow));
  if (blocked) {
    return refused(
      `The table ${blocked.table.name} cannot grow: the cells below it are not empty. ` +
        'Move what stands there, then try again.',
    );
  }
  const undo = grid.write(plan.writes.map((write) => cellWrite(tables, write)));
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

function planTable(grid: Grid, tables: LiveTables, table: LiveTable): PlanTable {
  const { startRow, startColumn } = bodyOf(table.range);
  return {
    ...tables.read(table),
    isFormula: (row, column) =>
      grid.read({ sheetId: table.sheetId, row: startRow + row, column: startColumn + column })
        .formula !== undefined,
  };
}

interface Growth {
  readonly table: LiveTable;
  readonly endRow: number;
}

function growthsOf(tables: LiveTables, writes: readonly PlannedWrite[]): Growth[] {
  return tables.all().flatMap((table) => {
    const rows = writes.filter((write) => write.table === table.name).map(({ row }) => row);
    const endRow = bodyOf(table.range).startRow + Math.max(-1, ...rows);
    return endRow > table.range.endRow ? [{ table, endRow }] : [];
  });
}

function isFreeBelow(grid: Grid, { sheetId, range }: LiveTable, endRow: number): boolean {
  // One row more than needed: a filled row right below would look like part of the table.
  return grid.isBlank(sheetId, { ...range, startRow: range.endRow + 1, endRow: endRow + 1 });
}

function cellWrite(tables: LiveTables, write: PlannedWrite): CellWrite {
  const table = tables.all().find(({ name }) => name === write.table);
  if (!table) throw new Error(`There is no table ${write.table}.`);
  const { startRow, startColumn } = bodyOf(table.range);
  return {
    sheetId: table.sheetId,
    row: startRow + write.row,
    column: startColumn + write.column,
    value: write.value,
    ...(startRow + write.row > table.range.endRow ? { likeRow: table.range.endRow } : {}),
  };
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

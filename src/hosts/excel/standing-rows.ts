import { idKey } from '../../workbook/ids.ts';
import type { Cell } from '../../workbook/port.ts';
import { columnOf, Refusal, type Target } from './change-plan.ts';

/** A row to read, and the id it must still hold by then. */
export interface RowToRead {
  readonly target: Target;
  readonly row: number;
  readonly idColumn: string;
  readonly id: string;
}

/** Neighbouring rows of one table, in one range. */
interface Block {
  readonly target: Target;
  readonly first: number;
  readonly height: number;
  readonly range: Excel.Range;
}

/**
 * Rows as they stand in the sheet, held by ranges: unlike row numbers, these stay with their rows when
 * a partner puts rows in or takes rows out above them.
 */
export class StandingRows {
  readonly #tables: Excel.TableCollection;
  readonly #byRow = new Map<Target, Map<number, Block>>();

  constructor(tables: Excel.TableCollection, blocks: readonly Block[]) {
    this.#tables = tables;
    for (const block of blocks) {
      const rows = this.#byRow.get(block.target) ?? new Map<number, Block>();
      for (let down = 0; down < block.height; down += 1) rows.set(block.first + down, block);
      this.#byRow.set(block.target, rows);
    }
  }

  values(target: Target, row: number): readonly Cell[] {
    const block = this.#blockOf(target, row);
    return block === undefined ? [] : (block.range.values[row - block.first] as Cell[]);
  }

  /** One cell of a row that was read: where its column meets its row, wherever they are by then. */
  cell(target: Target, row: number, column: number): Excel.Range {
    return this.#tables
      .getItem(target.tableId)
      .columns.getItem(target.headers[column] ?? '')
      .getDataBodyRange()
      .getIntersection(this.#row(target, row));
  }

  /** Rows that were read, from the bottom up, neighbours in one range. */
  rows(target: Target, rows: readonly number[]): Excel.Range[] {
    return runsOf(rows)
      .reverse()
      .map(({ first, height }) => this.#row(target, first).getResizedRange(height - 1, 0));
  }

  #row(target: Target, row: number): Excel.Range {
    const block = this.#blockOf(target, row);
    if (block === undefined) throw new Error(`Row ${row} of ${target.name} was not read.`);
    return block.range.getRow(row - block.first);
  }

  #blockOf(target: Target, row: number): Block | undefined {
    return this.#byRow.get(target)?.get(row);
  }
}

/**
 * Reads rows, one range for neighbours, in one sync; none where there is nothing to read. Refuses where
 * a row has moved since its id was found.
 */
export async function readStanding(
  context: Excel.RequestContext,
  wanted: readonly RowToRead[],
): Promise<StandingRows | Refusal> {
  const targets = [...new Set(wanted.map(({ target }) => target))];
  const blocks = targets.flatMap((target) => {
    const rows = wanted.filter((row) => row.target === target).map(({ row }) => row);
    const body = context.workbook.tables.getItem(target.tableId).getDataBodyRange();
    return runsOf(rows).map(({ first, height }): Block => {
      const range = body.getCell(first, 0).getResizedRange(height - 1, target.headers.length - 1);
      return { target, first, height, range: range.load('values') };
    });
  });
  const standing = new StandingRows(context.workbook.tables, blocks);
  if (blocks.length === 0) return standing;
  await context.sync();
  const moved = wanted.find(({ target, row, idColumn, id }) => {
    const column = columnOf(target, idColumn);
    return column === undefined || idKey(standing.values(target, row)[column]) !== idKey(id);
  });
  return moved === undefined ? standing : new Refusal(whyMoved(moved.target.name));
}

const whyMoved = (table: string): string =>
  `Rows of ${table} were moved just now, perhaps by a partner. Nothing was written; try again.`;

/** Row numbers as runs of neighbours, from the top down. */
function runsOf(rows: readonly number[]): { first: number; height: number }[] {
  const runs: { first: number; height: number }[] = [];
  for (const row of [...new Set(rows)].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && row === last.first + last.height) last.height += 1;
    else runs.push({ first: row, height: 1 });
  }
  return runs;
}

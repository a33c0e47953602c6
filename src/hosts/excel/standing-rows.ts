import { answer, type Result, wrong } from '../../domain/kernel/result.ts';
import { idKey } from '../../workbook/ids.ts';
import type { Cell } from '../../workbook/port.ts';
import type { RowToLookAt } from '../../workbook/write/free-rows.ts';
import type { CellsOf } from '../../workbook/write/writable-table.ts';
import { isFormula } from './cell-text.ts';
import { blocksOf, loadInParts } from './read-in-parts.ts';
import type { Target } from './target.ts';

/** Values and formulas, each about 10 to 20 bytes a cell; Excel on the web hands over at most 5 MB at once. */
const CELLS_A_SYNC = 75_000;

/** Neighbouring rows of one table, in one range. */
interface Block {
  readonly target: Target;
  readonly first: number;
  readonly height: number;
  readonly cells: number;
  readonly range: Excel.Range;
}

/**
 * Rows as they stand in the sheet, held by ranges: unlike row numbers, these stay with their rows when
 * a partner puts rows in or takes rows out above them.
 */
export class StandingRows implements CellsOf<Target> {
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

  readonly row = (target: Target, at: number): readonly Cell[] => {
    const block = this.#blockOf(target, at);
    return block === undefined ? [] : (block.range.values[at - block.first] as Cell[]);
  };

  /** A row's formulas; of a cell without one, its value. */
  formulas(target: Target, at: number): readonly Cell[] {
    const block = this.#blockOf(target, at);
    return block === undefined ? [] : (block.range.formulas[at - block.first] as Cell[]);
  }

  readonly isFormula = (target: Target, at: number, column: number): boolean =>
    isFormula(this.formulas(target, at)[column] ?? '', this.row(target, at)[column] ?? '');

  /** One cell of a row that was read: where its column meets its row, wherever they are by then. */
  cell(target: Target, at: number, column: number): Excel.Range {
    return this.#tables
      .getItem(target.tableId)
      .columns.getItem(target.headers[column] ?? '')
      .getDataBodyRange()
      .getIntersection(this.#range(target, at));
  }

  /** Rows that were read, from the bottom up, neighbours in one range. */
  ranges(
    target: Target,
    rows: readonly number[],
  ): { readonly height: number; readonly range: Excel.Range }[] {
    return runsOf(rows)
      .reverse()
      .map(({ first, height }) => ({
        height,
        range: this.#range(target, first).getResizedRange(height - 1, 0),
      }));
  }

  #range(target: Target, at: number): Excel.Range {
    const block = this.#blockOf(target, at);
    if (block === undefined) throw new Error(`Row ${at} of ${target.name} was not read.`);
    return block.range.getRow(at - block.first);
  }

  #blockOf(target: Target, at: number): Block | undefined {
    return this.#byRow.get(target)?.get(at);
  }
}

/**
 * Reads rows, one range for neighbours, in one sync for every 75,000 cells; none where there is nothing
 * to read. Refuses where a row has moved since its id was found.
 */
export async function readStanding(
  context: Excel.RequestContext,
  wanted: readonly RowToLookAt<Target>[],
): Promise<Result<StandingRows>> {
  const targets = [...new Set(wanted.map(({ table }) => table))];
  const blocks = targets.flatMap((target) =>
    runsOf(wanted.filter(({ table }) => table === target).map(({ at }) => at)).flatMap((run) =>
      blocksIn(context.workbook.tables, target, run),
    ),
  );
  const standing = new StandingRows(context.workbook.tables, blocks);
  if (blocks.length === 0) return answer(standing);
  await loadInParts(context, blocks, CELLS_A_SYNC, 'values,formulas');
  const moved = wanted.find(
    ({ table, at, idColumn, id }) => idKey(standing.row(table, at)[idColumn]) !== idKey(id),
  );
  return moved === undefined ? answer(standing) : wrong(whyMoved(moved.table.name));
}

/** A run of neighbouring rows, in as few ranges as can be read at once. */
function blocksIn(tables: Excel.TableCollection, target: Target, run: Run): Block[] {
  const columns = target.headers.length;
  const body = tables.getItem(target.tableId).getDataBodyRange();
  const rows = body.getCell(run.first, 0).getResizedRange(run.height - 1, columns - 1);
  let { first } = run;
  return blocksOf(rows, { rows: run.height, columns }, CELLS_A_SYNC).map(({ cells, range }) => {
    const block = { target, first, height: cells / columns, cells, range };
    first += block.height;
    return block;
  });
}

const whyMoved = (table: string): string =>
  `Rows of ${table} were moved just now, perhaps by a partner. Nothing was written; try again.`;

interface Run {
  readonly first: number;
  height: number;
}

/** Row numbers as runs of neighbours, from the top down. */
function runsOf(rows: readonly number[]): Run[] {
  const runs: Run[] = [];
  for (const row of [...new Set(rows)].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && row === last.first + last.height) last.height += 1;
    else runs.push({ first: row, height: 1 });
  }
  return runs;
}

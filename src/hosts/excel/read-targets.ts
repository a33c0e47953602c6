import { nameKey } from '../../domain/kernel/names.ts';
import { rowsById } from '../../workbook/ids.ts';
import type { Cell, Change } from '../../workbook/port.ts';
import { columnOf, idColumnsOf } from '../../workbook/write/writable-table.ts';
import { type Block, blocksOf, loadInParts } from './read-in-parts.ts';
import type { Target } from './target.ts';

/** Excel on the web hands over at most 5 MB at once; an id of ours takes about 30 bytes. */
const IDS_A_SYNC = 75_000;

/**
 * Reads of each table a change names what checking it takes: three syncs, whatever the change's size,
 * and one more for every 75,000 rows of a table. Tables that are not there are left out.
 */
export async function readTargets(
  context: Excel.RequestContext,
  change: Change,
): Promise<Target[]> {
  const idColumns = idColumnsOf(change);
  const tables = context.workbook.tables;
  tables.load(
    [
      'items/id,items/name,items/rows/count,items/autoFilter/isDataFiltered',
      'items/worksheet/name,items/worksheet/protection/protected',
    ].join(),
  );
  await context.sync();

  const wanted = tables.items.filter((table) => idColumns.has(nameKey(table.name)));
  const headerRows = wanted.map((table) => table.getHeaderRowRange().load('values'));
  await context.sync();

  const bare = wanted.map((table, index) => ({
    tableId: table.id,
    name: table.name,
    sheet: table.worksheet.name,
    protected: table.worksheet.protection.protected,
    filtered: table.autoFilter.isDataFiltered,
    headers: (headerRows[index]?.values[0] ?? []).map(String),
  }));
  const columns = wanted.flatMap((table, index) => {
    const target = bare[index];
    const headers = idColumns.get(nameKey(table.name)) ?? [];
    return target === undefined
      ? []
      : idBlocks(table, target.headers, headers).map((column) => ({ target, ...column }));
  });
  await loadInParts(
    context,
    columns.flatMap(({ blocks }) => blocks),
    IDS_A_SYNC,
  );

  return bare.map((target) => {
    const mine = columns.filter((column) => column.target === target);
    return { ...target, ...idsOf(mine) };
  });
}

interface IdColumn {
  readonly at: number;
  readonly blocks: readonly Block[];
}

/** A table's ids by column, once they were read. */
function idsOf(columns: readonly IdColumn[]): Pick<Target, 'height' | 'idsUnder'> {
  const read = columns.map(({ at, blocks }) => ({
    at,
    ids: blocks.flatMap(({ range }) => range.values as Cell[][]),
  }));
  const byColumn = new Map(read.map(({ at, ids }) => [at, rowsById(ids.map(([id]) => id))]));
  return {
    height: read[0]?.ids.length ?? 0,
    idsUnder: (column) => byColumn.get(column) ?? new Map<string, readonly number[]>(),
  };
}

/** The id columns of a table, to be read; an empty table has no body to ask for. */
function idBlocks(
  table: Excel.Table,
  headers: readonly string[],
  wanted: Iterable<string>,
): IdColumn[] {
  const { count } = table.rows;
  if (count === 0) return [];
  return [...wanted].flatMap((header) => {
    const at = columnOf({ headers }, header);
    if (at === undefined) return [];
    const body = table.columns.getItemAt(at).getDataBodyRange();
    return [{ at, blocks: blocksOf(body, { rows: count, columns: 1 }, IDS_A_SYNC) }];
  });
}

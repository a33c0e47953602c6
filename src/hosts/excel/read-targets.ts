import { nameKey } from '../../domain/kernel/names.ts';
import { rowsById } from '../../workbook/ids.ts';
import type { Cell, Change } from '../../workbook/port.ts';
import { columnOf, idColumnsOf } from '../../workbook/write/writable-table.ts';
import { blocksOf, loadInParts } from './read-in-parts.ts';
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
    if (target === undefined || table.rows.count === 0) return [];
    return [...(idColumns.get(nameKey(table.name)) ?? [])].flatMap((idColumn) => {
      const at = columnOf(target, idColumn);
      if (at === undefined) return [];
      const body = table.columns.getItemAt(at).getDataBodyRange();
      const blocks = blocksOf(body, { rows: table.rows.count, columns: 1 }, IDS_A_SYNC);
      return [{ target, at, blocks }];
    });
  });
  await loadInParts(
    context,
    columns.flatMap(({ blocks }) => blocks),
    IDS_A_SYNC,
  );

  return bare.map((target) => {
    const read = columns
      .filter((column) => column.target === target)
      .map(({ at, blocks }) => {
        const ids = blocks.flatMap(({ range }) => range.values as Cell[][]);
        return { at, height: ids.length, rows: rowsById(ids.map(([id]) => id)) };
      });
    const byColumn = new Map(read.map(({ at, rows }) => [at, rows]));
    return {
      ...target,
      height: read[0]?.height ?? 0,
      idsUnder: (column) => byColumn.get(column) ?? new Map<string, readonly number[]>(),
    };
  });
}

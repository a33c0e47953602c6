import { nameKey } from '../../domain/kernel/names.ts';
import type { Change } from '../../workbook/port.ts';
import { columnOf, type Target, textOf } from './change-plan.ts';

/**
 * Reads of each table a change names what checking it takes: three syncs, whatever its size. Tables
 * that are not there are left out.
 */
export async function readTargets(
  context: Excel.RequestContext,
  change: Change,
): Promise<Map<string, Target>> {
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
    places: new Map<string, ReadonlyMap<string, readonly number[]>>(),
  }));
  const columns = wanted.flatMap((table, index) => {
    const target = bare[index];
    if (target === undefined || table.rows.count === 0) return [];
    return [...(idColumns.get(nameKey(table.name)) ?? [])].flatMap((idColumn) => {
      const at = columnOf(target, idColumn);
      if (at === undefined) return [];
      const cells = table.columns.getItemAt(at).getDataBodyRange().load('values');
      return [{ target, idColumn, cells }];
    });
  });
  await context.sync();

  for (const { target, idColumn, cells } of columns) {
    target.places.set(idColumn, placesById(cells.values));
  }
  return new Map(bare.map((target) => [nameKey(target.name), target]));
}

/** By table key, the id columns that the change names. */
function idColumnsOf(change: Change): Map<string, Set<string>> {
  const byTable = new Map<string, Set<string>>();
  for (const { table, idColumn } of [...change.appends, ...change.updates]) {
    const key = nameKey(table);
    byTable.set(key, (byTable.get(key) ?? new Set()).add(nameKey(idColumn)));
  }
  return byTable;
}

function placesById(column: readonly (readonly unknown[])[]): Map<string, number[]> {
  const places = new Map<string, number[]>();
  column.forEach(([cell], row) => {
    const id = textOf(cell as string);
    if (id === '') return;
    const rows = places.get(id);
    if (rows === undefined) places.set(id, [row]);
    else rows.push(row);
  });
  return places;
}

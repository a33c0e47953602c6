import type { Cell, TableData } from '../../workbook/port.ts';
import type { Run } from './apply-change.ts';
import { blocksOf, loadInParts } from './read-in-parts.ts';

/** Excel on the web hands over at most 5 MB at once; a cell of ours takes about 10 to 20 bytes. */
const CELLS_A_SYNC = 150_000;

/** Below this a table's texts are not what is too large. */
const FEWEST_CELLS = 1_000;

/**
 * Reads every table with a header row: one sync for their names, then one for all their cells, or
 * one for every 150,000 cells of a large workbook. Where long texts make that more than Excel hands
 * over at once, begins again with fewer cells a sync.
 */
export async function readHostTables(run: Run, cells = CELLS_A_SYNC): Promise<TableData[]> {
  try {
    return await run((context) => readInParts(context, cells));
  } catch (problem) {
    const { code } = problem as { readonly code?: unknown };
    if (code !== 'ResponsePayloadSizeLimitExceeded' || cells < FEWEST_CELLS) throw problem;
    return readHostTables(run, Math.floor(cells / 8));
  }
}

async function readInParts(context: Excel.RequestContext, cells: number): Promise<TableData[]> {
  const tables = context.workbook.tables;
  tables.load(
    'items/name,items/showHeaders,items/worksheet/name,items/rows/count,items/columns/count',
  );
  await context.sync();

  const found = tables.items.filter((table) => table.showHeaders);
  const headers = found.map((table) => table.getHeaderRowRange().load('values,rowIndex'));
  const bodies = found.map((table) => {
    const [rows, columns] = [table.rows.count, table.columns.count];
    // An empty table has no body to ask for: asking alone would break the whole reading off.
    return rows === 0 ? [] : blocksOf(table.getDataBodyRange(), { rows, columns }, cells);
  });
  await loadInParts(context, bodies.flat(), cells);

  return found.map((table, index) => ({
    name: table.name,
    headers: (headers[index]?.values[0] ?? []).map(String),
    rows: (bodies[index] ?? []).flatMap(({ range }) => range.values as Cell[][]),
    on: { sheet: table.worksheet.name, headerRow: (headers[index]?.rowIndex ?? 0) + 1 },
  }));
}

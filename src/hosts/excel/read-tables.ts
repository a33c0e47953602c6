import type { Cell, TableData } from '../../workbook/port.ts';
import type { Run } from './apply-change.ts';

/** Excel on the web hands over at most 5 MB at once; a cell of ours takes about 10 to 20 bytes. */
const CELLS_A_SYNC = 150_000;

/** Below this a table's texts are not what is too large. */
const FEWEST_CELLS = 1_000;

interface Block {
  readonly cells: number;
  readonly range: Excel.Range;
}

/**
 * Reads every table with a header row: one sync for their names, then one for all their cells, or
 * one for every 150,000 cells of a large workbook. Where long texts make that more than Excel hands
 * over at once, begins again with fewer cells a sync.
 */
export async function readTables(run: Run, cells = CELLS_A_SYNC): Promise<TableData[]> {
  try {
    return await run((context) => readInParts(context, cells));
  } catch (problem) {
    const { code } = problem as { readonly code?: unknown };
    if (code !== 'ResponsePayloadSizeLimitExceeded' || cells < FEWEST_CELLS) throw problem;
    return readTables(run, Math.floor(cells / 8));
  }
}

async function readInParts(context: Excel.RequestContext, cells: number): Promise<TableData[]> {
  const tables = context.workbook.tables;
  tables.load('items/name,items/showHeaders,items/rows/count,items/columns/count');
  await context.sync();

  const found = tables.items.filter((table) => table.showHeaders);
  const headers = found.map((table) => table.getHeaderRowRange().load('values'));
  const bodies = found.map((table) => blocksOf(table, cells));
  await loadInParts(context, bodies.flat(), cells);

  return found.map((table, index) => ({
    name: table.name,
    headers: (headers[index]?.values[0] ?? []).map(String),
    rows: (bodies[index] ?? []).flatMap(({ range }) => range.values as Cell[][]),
  }));
}

/** The table's body in pieces of whole rows, each of no more than so many cells. */
function blocksOf(table: Excel.Table, cells: number): Block[] {
  const rows = table.rows.count;
  // An empty table has no body to ask for: asking alone would break the whole reading off.
  if (rows === 0) return [];
  const columns = table.columns.count;
  const most = Math.max(1, Math.floor(cells / columns));
  const body = table.getDataBodyRange();
  const blocks: Block[] = [];
  for (let first = 0; first < rows; first += most) {
    const height = Math.min(most, rows - first);
    const whole = height === rows;
    blocks.push({
      cells: height * columns,
      range: whole ? body : body.getCell(first, 0).getResizedRange(height - 1, columns - 1),
    });
  }
  return blocks;
}

async function loadInParts(
  context: Excel.RequestContext,
  blocks: readonly Block[],
  most: number,
): Promise<void> {
  let waiting = 0;
  for (const { cells, range } of blocks) {
    if (waiting > 0 && waiting + cells > most) {
      await context.sync();
      waiting = 0;
    }
    range.load('values');
    waiting += cells;
  }
  // The last sync also brings the headers, which are queued even where no body is.
  await context.sync();
}

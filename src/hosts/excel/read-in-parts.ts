/** A piece of a table's body that is read at once. */
export interface Block {
  readonly cells: number;
  readonly range: Excel.Range;
}

/**
 * Cuts a body of so many rows and columns into blocks of whole rows, each of no more than `most` cells.
 * All of them are held from the next sync on, so a partner's row put in or taken out between two syncs
 * shifts no row past them.
 */
export function blocksOf(
  body: Excel.Range,
  { rows, columns }: { readonly rows: number; readonly columns: number },
  most: number,
): Block[] {
  const tallest = Math.max(1, Math.floor(most / columns));
  const blocks: Block[] = [];
  for (let first = 0; first < rows; first += tallest) {
    const height = Math.min(tallest, rows - first);
    const whole = height === rows;
    blocks.push({
      cells: height * columns,
      range: whole ? body : body.getCell(first, 0).getResizedRange(height - 1, columns - 1),
    });
  }
  return blocks;
}

/** Loads the blocks' values, or what else is asked of them, no more than `most` cells a sync; what else is queued comes along. */
export async function loadInParts(
  context: Excel.RequestContext,
  blocks: readonly Block[],
  most: number,
  what = 'values',
): Promise<void> {
  let waiting = 0;
  for (const { cells, range } of blocks) {
    if (waiting > 0 && waiting + cells > most) {
      await context.sync();
      waiting = 0;
    }
    range.load(what);
    waiting += cells;
  }
  await context.sync();
}

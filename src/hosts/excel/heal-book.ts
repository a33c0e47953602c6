import type { Run } from './apply-change.ts';

/** The name of the cell that holds =POUR.BOOK(…). */
const BOOK_NAME = 'Book';

/**
 * Has Excel work out the cell named Book again, and all that depends on it: after reopening, cells
 * show a handle whose book is not in memory yet. Two syncs. Answers whether there is such a cell.
 */
export async function healBook(run: Run): Promise<boolean> {
  return run(async (context) => {
    const names = context.workbook.names.load('items/name,items/type');
    await context.sync();
    const book = names.items.find(
      ({ name, type }) => name.toLowerCase() === BOOK_NAME.toLowerCase() && type === 'Range',
    );
    if (book === undefined) return false;
    book.getRange().setDirty();
    context.workbook.application.calculate('Recalculate');
    await context.sync();
    return true;
  });
}

import type { Cell } from '../../workbook/port.ts';
import type { Run } from './apply-change.ts';

/** The name of the cell that holds =POUR.BOOK(…). */
const BOOK_NAME = 'Book';

/**
 * Has Excel work out the cell named Book again, and all that depends on it: cells may show a handle whose
 * book is in no memory here. Two syncs. Answers what the cell shows then, which in Excel on the web may not
 * be its answer yet; undefined where there is no such cell.
 */
export const healBook = (run: Run): Promise<Cell | undefined> =>
  atBook(run, (context, book) => {
    book.setDirty();
    context.workbook.application.calculate('Recalculate');
  });

/** What the cell named Book shows, in two syncs; undefined where there is no such cell. */
export const lookAtBook = (run: Run): Promise<Cell | undefined> => atBook(run, () => undefined);

function atBook(
  run: Run,
  queue: (context: Excel.RequestContext, book: Excel.Range) => void,
): Promise<Cell | undefined> {
  return run(async (context) => {
    const names = context.workbook.names.load('items/name,items/type');
    await context.sync();
    const named = names.items.find(
      ({ name, type }) => name.toLowerCase() === BOOK_NAME.toLowerCase() && type === 'Range',
    );
    if (named === undefined) return undefined;
    const book = named.getRange();
    queue(context, book);
    book.load('values');
    await context.sync();
    return book.values[0]?.[0] as Cell;
  });
}

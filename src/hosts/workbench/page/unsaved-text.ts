import type { SheetEdits } from '../../xlsx/image.ts';
import { addressOf } from './message-line.ts';

/** Unsaved cells as lines of text: sheet, cell, and what stands in it, between tabs. */
export function textOfEdits(edits: readonly SheetEdits[]): string {
  return edits
    .flatMap(({ sheet, cells }) =>
      cells.map(({ row, column, value, formula }) =>
        [sheet, addressOf(row, column), formula ?? String(value)].join('\t'),
      ),
    )
    .join('\n');
}

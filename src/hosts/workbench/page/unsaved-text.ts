import type { Cell } from '../../../workbook/port.ts';
import type { SheetEdits } from '../../../xlsx/image.ts';
import { addressOf } from './message-line.ts';

/**
 * Unsaved cells as lines of text: sheet, cell, and what stands in it, between tabs. Pasted into a sheet
 * it gives those three cells for each, and none that runs: a formula stays text behind its "'".
 */
export function textOfEdits(edits: readonly SheetEdits[]): string {
  return edits
    .flatMap(({ sheet, cells }) =>
      cells.map(({ row, column, value, formula }) =>
        [
          plain(sheet),
          addressOf(row, column),
          formula === undefined ? shown(value) : plain(formula),
        ].join('\t'),
      ),
    )
    .join('\n');
}

const shown = (value: Cell): string => (typeof value === 'string' ? plain(value) : String(value));

/** Text that a sheet reads as text, in one cell. */
function plain(text: string): string {
  const safe = /^\s*[=+\-@]/.test(text) ? `'${text}` : text;
  return /["\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

import { CellValueType, type ICellData, type Injector } from '@univerjs/presets';
import { AFTER_CELL_EDIT, SheetInterceptorService } from '@univerjs/preset-sheets-core';
import { isUnclearDay } from '../../../domain/kernel/typed-day.ts';

/** Before the grid's own reading, which takes 3/4/26 for the 4th of March and April 13 for April 2013. */
const FIRST = 1000;

/** Leaves a day that can be read in two ways, or says no year, as the text it was typed: BOOK asks which is meant. */
export function askDates(injector: Injector): void {
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    priority: FIRST,
    handler: (value, _context, next) => {
      const text = value ? textOf(value) : '';
      return isUnclearDay(text)
        ? next({ ...value, p: null, v: text, t: CellValueType.FORCE_STRING })
        : next(value);
    },
  });
}

function textOf(cell: Pick<ICellData, 'p' | 'v'>): string {
  const typed = cell.p?.body?.dataStream.replace(/\r\n$/u, '');
  return typed ?? (typeof cell.v === 'string' ? cell.v : '');
}

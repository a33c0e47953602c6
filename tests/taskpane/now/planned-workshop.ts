import type { TableData } from '../../../src/workbook/port.ts';
import { marketWorkshop } from '../market-workshop.ts';
import { rowsOf, withRows } from '../small-workshop.ts';

/**
 * A plan with a line of the past, one for which an hour a day leaves no time, and one that takes more base
 * than there is; lead days are blank.
 */
export const plannedWorkshop: readonly TableData[] = [
  ...withRows(marketWorkshop, 'Settings', (rows) => [...rows, ...rowsOf(['Minutes per day|60'])]),
  {
    name: 'Plan',
    headers: 'Plan line|Design|Bars|Ready by|Fair'.split('|'),
    rows: rowsOf([
      'P-1|Plain Wave|6|2026-11-20|',
      'P-2|Harbour Light|50|2026-11-28|Quay Fair',
      'P-3|Plain Wave|60|2026-12-20|',
    ]),
  },
];

import type { TableData } from '../../src/workbook/port.ts';
import { rowsOf, smallWorkshop, withRows } from './small-workshop.ts';

const more = (
  tables: readonly TableData[],
  name: string,
  lines: readonly string[],
): readonly TableData[] => withRows(tables, name, (rows) => [...rows, ...rowsOf(lines)]);

const withBars = more(
  more(smallWorkshop, 'LedgerLines', [
    'M-3|2026-10-05|made|Plain Wave|6|B-OLD|3.6|B-OLD||',
    'M-4|2026-11-01|made|Harbour Light|10|B-HL|20|B-HL||',
  ]),
  'Batches',
  ['B-HL|2026-11-01|Harbour Light|10|10|0|70|20|3.1|2026-11-03|posted||'],
);

/**
 * The small workshop with bars to sell and fairs to sell them at: 10 Harbour Light that cost 3.10 each
 * in full, 6 Plain Wave that cost 0.60; 10 % sales tax inside the prices.
 */
export const marketWorkshop: readonly TableData[] = [
  ...more(withBars, 'Settings', ['Sales tax %|10', 'Prices include tax|yes']),
  {
    name: 'Fairs',
    headers: 'Fair|Opens|Stall fee|Travel|Other cost|Hours'.split('|'),
    rows: rowsOf(['Quay Fair|2026-11-21|40|12|0|8', 'Spring Fair|2027-04-03|30|0|0|']),
  },
  {
    name: 'Sales',
    headers: 'Sale|Sold on|Design|Bars|Price each|Fair|Fees'.split('|'),
    rows: [],
  },
];

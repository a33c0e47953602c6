import { table, type Tables } from '../../support/small-book.ts';

/** L1 goes into B1; its leftover into B2; B2's spare tiles into B3; B4 has nothing of it. */
export const chain: Tables = {
  Materials: table(
    'Material | Kind | Unit',
    ['Clear base', 'base', 'g'],
    ['Teal drops', 'colourant', 'g'],
    ['Box', 'packaging', 'each'],
  ),
  Lots: table(
    'Lot | Material | Received | Quantity | Paid | Supplier',
    ['L1', 'Clear base', '2024-01-01', 500, 5, 'Cove Supply'],
    ['L2', 'Clear base', '2024-01-02', 500, 5, 'Cove Supply'],
    ['D1', 'Teal drops', '2024-01-01', 50, 5, ''],
    ['X1', 'Box', '2024-01-01', 50, 5, ''],
  ),
  Molds: table('Mold | Makes | Cavities | Fill g', ['Tiles', 'tiles', 36, 25]),
  Colours: table(
    'Colour | Ingredient | Amount | Measure',
    ['Teal', 'Clear base', 9, 'g'],
    ['Teal', 'Teal drops', 1, 'g'],
    ['Clear tint', 'Clear base', 1, 'g'],
  ),
  Designs: table('Design', ['Tide Pool'], ['Plain']),
  Batches: table(
    'Batch | Poured | Design | Bars | Good | State',
    ['B1', '2024-02-01', 'Tide Pool', 12, 12, 'posted'],
    ['B2', '2024-02-02', 'Plain', 6, 6, 'posted'],
    ['B3', '2024-02-03', 'Tide Pool', 6, 5, 'posted'],
    ['B4', '2024-02-04', 'Plain', 6, 6, 'posted'],
  ),
  LedgerLines: table(
    'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
    ['B1.01', '2024-02-01', 'used', 'Clear base', -400, 'L1', '', 'B1', '', ''],
    ['B1.02', '2024-02-01', 'used', 'Teal drops', -10, 'D1', '', 'B1', '', ''],
    ['B1.03', '2024-02-01', 'used', 'Box', -12, 'X1', '', 'B1', '', ''],
    ['B1.04', '2024-02-01', 'left over', 'Clear tint leftover', 30, 'B1', '', 'B1', '', ''],
    ['B1.05', '2024-02-01', 'made', 'Tide Pool', 12, 'B1', '', 'B1', '', ''],
    ['B2.01', '2024-02-02', 'used', 'Clear tint leftover', -30, '', '', 'B2', '', ''],
    ['B2.02', '2024-02-02', 'spare', 'Clear tint × Tiles', 8, '', '', 'B2', '', ''],
    ['B2.03', '2024-02-02', 'made', 'Plain', 6, '', '', 'B2', '', ''],
    ['B3.01', '2024-02-03', 'used', 'Clear tint × Tiles', -8, 'B2', '', 'B3', '', ''],
    ['B3.02', '2024-02-03', 'made', 'Tide Pool', 5, 'B3', '', 'B3', '', ''],
    ['B4.01', '2024-02-04', 'used', 'Clear base', -200, 'L2', '', 'B4', '', ''],
    ['B4.02', '2024-02-04', 'made', 'Plain', 6, 'B4', '', 'B4', '', ''],
    ['S1', '2024-02-05', 'sold', 'Tide Pool', -7, '', '', '', '', 'Harbour Fair'],
    ['S2', '2024-02-06', 'sold', 'Tide Pool', -6, '', '', '', '', 'By post'],
    ['W1', '2024-02-06', 'wasted', 'Plain', -1, 'B2', '', '', '', ''],
  ),
};

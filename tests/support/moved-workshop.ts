import { withRows, workshop } from './small-book.ts';

/** The small workshop with a few moves of every kind. */
export const movedWorkshop = withRows(
  workshop,
  'LedgerLines',
  ['E1', '2024-03-01', 'used', 'Clear base', -500, 'C2', -4.5, 'T1', '', ''],
  ['E2', '2024-03-01', 'used', 'Blue mica', -4, 'M1', -0.8, 'T1', '', ''],
  ['E3', '2024-03-01', 'left over', 'Slate leftover', 12.5, 'T1', 0.25, 'T1', '', ''],
  ['E4', '2024-03-01', 'spare', 'Teal × Tiles', 18, 'T1', 0.36, 'T1', '', ''],
  ['E5', '2024-03-01', 'made', 'Tide Pool', 6, 'T1', 9, 'T1', '', ''],
  ['E6', '2024-03-08', 'sold', 'Tide Pool', -2, 'T1', -3, '', '', ''],
  ['E7', '2024-03-09', 'counted', 'Box', 3, '', '', '', '', ''],
  ['E8', '2024-03-10', 'wasted', 'Orange oil', -20, 'O1', -3, '', '', ''],
);

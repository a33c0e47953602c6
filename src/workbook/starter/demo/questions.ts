import type { FairQuestion } from '../fair-prices-sheet.ts';
import type { SetOfBars } from '../pricing-set.ts';
import type { Supposed } from '../what-if-sheet.ts';
import { lanternQuay, tidePool, winterBeacon } from './designs.ts';
import { tileMold } from './recipes.ts';

/** What the demo's sheets ask when the workbook is first opened. */
export const demoSet: SetOfBars = {
  bars: [
    [lanternQuay, 1],
    [tidePool, 1],
    [winterBeacon, 1],
  ],
  packaging: 0.85,
  margin: 22,
};

export const demoFairQuestion: FairQuestion = {
  fair: 'Lamplight Fair 2026',
  design: '',
  barsExpected: 45,
  lowestPrice: 8.5,
};

export const demoSupposed: Supposed = {
  design: lanternQuay,
  mold: tileMold,
  base: 'Clear base',
  moreBars: 6,
  pricesUp: 10,
  lateDays: 5,
  lostFills: 2,
};

import type { FairQuestion } from '../sheets/fair-prices-sheet.ts';
import type { SetOfBars } from '../blocks/pricing-set.ts';
import type { Supposed } from '../sheets/what-if-sheet.ts';
import { lanternQuay, tidePool, winterBeacon } from './designs.ts';
import { smallTray } from './recipes.ts';

/** What the demo's sheets ask when the workbook is first opened. */
export const demoSet: SetOfBars = {
  bars: [
    [lanternQuay, 1],
    [tidePool, 1],
    [winterBeacon, 2],
  ],
  packaging: 1.1,
  margin: 24,
};

export const demoFairQuestion: FairQuestion = {
  fair: 'Lamplight Fair',
  design: '',
  barsExpected: 52,
  lowestPrice: 9.5,
};

export const demoSupposed: Supposed = {
  design: lanternQuay,
  mold: smallTray,
  base: 'Clear base',
  moreBars: 5,
  pricesUp: 8,
  lateDays: 4,
  lostFills: 3,
};

import type { Design, Mold } from '../book/book.ts';
import type { Exact } from '../kernel/exact.ts';
import { against, type CheckLine } from './check-line.ts';
import type { Composition } from './composition.ts';

/** One bar's layers against one cavity of the mold that it is poured in. */
export interface MoldFit {
  readonly mold: Mold;
  /** All that goes into one bar. */
  readonly barG: Exact;
  /** Fill g ÷ Cavities. */
  readonly cavityG: Exact;
  readonly isOver: boolean;
}

/** Finer than any scale; a sixth of a mold has no last digit. */
const CAVITY_DECIMALS = 3;

/** Whether a bar fits its cavity; undefined where the design names no bar mold, or its Fill g is blank. */
export function moldFit({ barMold }: Design, { totalG }: Composition): MoldFit | undefined {
  if (barMold === undefined || barMold.fillG.isZero()) return undefined;
  const barG = totalG.toDecimalPlaces(CAVITY_DECIMALS);
  const cavityG = barMold.fillG.div(barMold.cavities).toDecimalPlaces(CAVITY_DECIMALS);
  return { mold: barMold, barG, cavityG, isOver: barG.gt(cavityG) };
}

/** The line of CHECKS for it; none where the mold's fill is not known. */
export function moldChecks(design: Design, composition: Composition): CheckLine[] {
  const fit = moldFit(design, composition);
  if (fit === undefined) return [];
  const { mold, barG, cavityG } = fit;
  return [
    {
      check: 'Layers of one bar, g (not over one cavity)',
      value: barG,
      limit: cavityG,
      result: against(barG, cavityG),
      source: `Fill g ÷ Cavities of ${mold.name} in Molds`,
    },
  ];
}

/** What to say before anything is melted for a bar that its mold can't hold. */
export const overfullSentence = ({ mold, barG, cavityG }: MoldFit): string =>
  `The layers of one bar come to ${barG.toString()} g, and one cavity of ${mold.name} holds ${cavityG.toString()} g: it would run over. Pour less, or use a larger mold.`;

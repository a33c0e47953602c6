import type { Book } from '../../src/domain/book/book.ts';
import { findDesign } from '../../src/domain/book/find.ts';
import { count } from '../../src/domain/kernel/count.ts';
import { all, andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { leftoversOnHand } from '../../src/domain/recipe/leftovers-on-hand.ts';
import {
  type BarsWanted,
  planSitting,
  planSittingByHand,
  type Sitting,
} from '../../src/domain/recipe/melt-plan.ts';
import { noLeftovers } from '../../src/domain/recipe/melt.ts';
import { plainPlan } from '../../src/domain/recipe/plain-plan.ts';
import type { GivenTo } from '../answer.ts';
import type { makeRecords } from '../records/make.ts';

/** Designs and bars as cells gave them: one batch, or all that is made in one sitting (contract §3.9). */
export type SittingAsked = GivenTo<(typeof makeRecords)['MELTSHEET']>;

/** How a sitting is planned: just as recipes say, or in what a hand can measure. */
export interface Planning {
  readonly plan: typeof planSitting;
  /** Keeps the plans of one design alone, without leftovers, that are asked for most. */
  readonly alone?: typeof plainPlan;
}

export const byRecipe: Planning = { plan: planSitting, alone: plainPlan };
export const asWeighed: Planning = { plan: planSittingByHand };

/** What the designs asked for take together. */
export function sittingOf(asked: SittingAsked, { plan, alone }: Planning): Result<Sitting> {
  const { book, useLeftovers, today } = asked;
  return andThen(wantedIn(asked), (wanted) => {
    const [first, ...more] = wanted;
    if (alone !== undefined && first !== undefined && more.length === 0 && !useLeftovers)
      return alone(first.design, first.bars, book.settings);
    const stock = useLeftovers ? leftoversOnHand(book, today, true) : noLeftovers;
    return plan(wanted, book.settings, stock);
  });
}

function wantedIn({ design: designs, bars, book }: SittingAsked): Result<BarsWanted[]> {
  if (designs.length !== bars.length) {
    return wrong(
      `design has ${rows(designs)} and bars ${rows(bars)}. Give two ranges of the same height: a design and its bars in each row.`,
    );
  }
  return all(
    designs.flatMap((name, at) => {
      const barsInRow = bars[at];
      if (name === '' && barsInRow === undefined) return [];
      return [wantedInRow(book, name, barsInRow, at + 1)];
    }),
  );
}

function wantedInRow(
  book: Book,
  name: string,
  bars: number | undefined,
  row: number,
): Result<BarsWanted> {
  if (name === '') {
    return wrong(
      `design is blank in row ${row}, beside ${String(bars)} bars. Name the design, or clear the bars.`,
    );
  }
  return andThen(findDesign(book, name), (design) =>
    bars === undefined
      ? wrong(
          `bars is blank in row ${row}, beside ${design.name}. Type how many, or clear the design.`,
        )
      : answer({ design, bars }),
  );
}

const rows = (cells: readonly unknown[]): string => count(cells.length, 'row');

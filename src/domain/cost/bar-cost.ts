import { asMoney, type Money } from '../kernel/measured.ts';
import type { Book, Design, Material } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { addTo, type Exact, sum, zero } from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';
import { answer, type Result, andThen } from '../kernel/result.ts';
import { splitAmount } from '../money/split.ts';
import { materialsPerG } from '../recipe/materials-per-g.ts';
import type { MeltPlan } from '../recipe/melt-plan.ts';
import { plainPlan } from '../recipe/plain-plan.ts';
import { moldWear } from './mold-wear.ts';
import { costOf } from './unit-costs.ts';

/** Where the cost of one good bar goes. Lines sum to `perBar` exactly. */
export interface BarCost {
  readonly perBar: Money;
  readonly lines: readonly CostLine[];
}

export interface CostLine {
  readonly kind: 'material' | 'labour' | 'setup' | 'mold wear' | 'overhead' | 'lost bars';
  readonly name: string;
  readonly perBar: Money;
}

/** Costs are exact to this many decimals; the lines are split so that not one is lost. */
const COST_DECIMALS = 10;

/**
 * Full cost of one good bar in a batch of `bars` good bars: material, labour, setup, mold wear and
 * overhead of every bar started, over the good ones. Spare tiles and leftover soap carry their cost
 * out of the bars (contract §5). In the Settings' currency.
 */
export function barCost(book: Book, design: Design, bars: number, asOf: Day): Result<BarCost> {
  return andThen(plainPlan(design, bars, book.settings), (plan) =>
    andThen(batchLines(book, plan, asOf), (lines) => answer(spread(lines, plan))),
  );
}

interface BatchLine {
  readonly kind: CostLine['kind'];
  readonly name: string;
  readonly cost: Money;
}

/** Cost of the whole batch, a line each. */
function batchLines(book: Book, plan: MeltPlan, asOf: Day): Result<BatchLine[]> {
  const { design, barsToStart } = plan;
  const { labourRatePerHour, overheadPerBar } = book.settings;
  const perMinute = labourRatePerHour.div(60);
  const materials = andThen(costOf(book, materialsInBars(plan), asOf), (lines) =>
    answer(
      lines.map(({ material, cost }): BatchLine => ({
        kind: 'material',
        name: material.name,
        cost: asMoney(cost),
      })),
    ),
  );
  return andThen(materials, (materialLines) =>
    andThen(moldWear(plan), (wear) =>
      answer<BatchLine[]>([
        ...materialLines,
        {
          kind: 'labour',
          name: 'Labour',
          cost: asMoney(design.labourMinutes.times(barsToStart).times(perMinute)),
        },
        { kind: 'setup', name: 'Setup', cost: asMoney(design.setupMinutes.times(perMinute)) },
        ...wear.map(({ mold, cost }): BatchLine => ({
          kind: 'mold wear',
          name: `${mold.name} wear`,
          cost,
        })),
        { kind: 'overhead', name: 'Overhead', cost: asMoney(overheadPerBar.times(barsToStart)) },
      ]),
    ),
  );
}

/** Materials that end up in the bars, in stock units: no spares, no leftovers, no scrape. */
const materialsInBars = oncePer((plan: MeltPlan): ReadonlyMap<Material, Exact> => {
  const quantities = new Map<Material, Exact>();
  for (const { soap, shapes, pouredG } of plan.melts) {
    const shapedG = sum(
      shapes.map(({ mold, piecesNeeded }) => piecesNeeded.times(mold.fillG).div(mold.cavities)),
    );
    const inBarsG = shapedG.plus(pouredG);
    for (const [material, perG] of materialsPerG(soap))
      addTo(quantities, material, perG.times(inBarsG));
  }
  for (const { material, quantity } of plan.added) addTo(quantities, material, quantity);
  return quantities;
});

/** Per bar started, with what the lost bars took as a line of its own. */
function spread(lines: readonly BatchLine[], { bars, barsToStart }: MeltPlan): BarCost {
  const total = sum(lines.map((line) => line.cost));
  const perBar = asMoney(total.div(bars).toDecimalPlaces(COST_DECIMALS));
  let split: readonly CostLine[] | undefined;
  return {
    perBar,
    // Most ask for the whole alone, and splitting it takes longer than working it out.
    get lines() {
      return (split ??= splitLines(lines, perBar, { total, bars, barsToStart }));
    },
  };
}

function splitLines(
  lines: readonly BatchLine[],
  perBar: Exact,
  { total, bars, barsToStart }: Pick<MeltPlan, 'bars' | 'barsToStart'> & { readonly total: Exact },
): CostLine[] {
  // In the measure of the lines, which are for the bars started.
  const lost = total.times(barsToStart.minus(bars)).div(bars);
  const costs = lines.map(({ cost }) => cost);
  const parts = splitAmount(perBar, [...costs, lost], COST_DECIMALS);
  const named: readonly Omit<CostLine, 'perBar'>[] = [
    ...lines,
    { kind: 'lost bars', name: 'Lost bars' },
  ];
  return named.map(({ kind, name }, index) => ({
    kind,
    name,
    perBar: asMoney(parts[index] ?? zero),
  }));
}

import type { Batch, Book, Item, Move } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { type Exact, exact, one, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { all, andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { materialNeeds } from '../recipe/material-needs.ts';
import { planByHand } from '../recipe/melt-plan.ts';
import { noLeftovers } from '../recipe/melt.ts';
import { movesOfBatch } from '../stock/batch-moves.ts';
import { packUnitCost } from '../stock/lot-cost.ts';
import { shelfAt, unitCost } from '../stock/valuation.ts';

/** One item of a batch: what it should have used by the recipe, and what the ledger says it used. */
export interface VarianceLine {
  readonly item: Item;
  readonly planned: Exact;
  readonly used: Exact;
  /** At the standard cost: pack price ÷ pack size, else the unit cost of the day. */
  readonly plannedCost: Exact;
  /** As valued in the ledger; a use without a Value at its lot's cost, or at the average. */
  readonly usedCost: Exact;
  /** (used − planned) × standard cost: more than 0 was used too much. */
  readonly quantityDifference: Exact;
  /** What is left of the whole difference: more than 0 was paid too much. */
  readonly priceDifference: Exact;
}

/**
 * Planned against actual for one batch, the usual split of a materials variance into quantity and
 * price, which sum to used − planned cost exactly. The plan is what the cards say for the bars started,
 * without leftovers; leftovers and spares used stand as lines with nothing planned.
 */
export function batchVariance(book: Book, batch: Batch): Result<VarianceLine[]> {
  const moves = movesOfBatch(book, nameKey(batch.batch)).live.filter(
    ({ reason }) => reason === 'used',
  );
  if (moves.length === 0) {
    return notYet(
      `Batch ${batch.batch} has no lines in LedgerLines, so what it used is not known.`,
    );
  }
  if (batch.design === undefined) return notYet(shapedAhead(batch));
  const startedDesign = { ...batch.design, yieldShare: one };
  return andThen(planByHand(startedDesign, batch.bars, book.settings, noLeftovers), (plan) => {
    const lines = new Map<string, { item: Item; planned: Exact; used: Exact; usedCost: Exact }>();
    for (const { material, quantity } of materialNeeds(plan)) {
      const item = itemOfMaterial(material);
      lines.set(nameKey(item.name), { item, planned: quantity, used: zero, usedCost: zero });
    }
    for (const move of moves) {
      const { item, quantity } = move;
      const cost = costOfUse(book, move);
      if (!cost.ok) return cost;
      const line = lines.get(nameKey(item.name)) ?? {
        item,
        planned: zero,
        used: zero,
        usedCost: zero,
      };
      lines.set(nameKey(item.name), {
        ...line,
        used: line.used.minus(exact(quantity)),
        usedCost: line.usedCost.plus(cost.value),
      });
    }
    return all(
      [...lines.values()]
        .sort((a, b) => compareNames(a.item.name, b.item.name))
        .map((line) =>
          andThen(standardCost(book, line.item, batch), (standard) => {
            const plannedCost = line.planned.times(standard);
            const quantityDifference = line.used.minus(line.planned).times(standard);
            const priceDifference = line.usedCost.minus(plannedCost).minus(quantityDifference);
            return answer({ ...line, plannedCost, quantityDifference, priceDifference });
          }),
        ),
    );
  });
}

const shapedAhead = ({ batch }: Batch): string =>
  `Batch ${batch} shaped pieces ahead, of no design, so there is no plan to hold it against.`;

/** What a `used` move took: its Value or, where that is blank, what its lot or the average says. */
function costOfUse(book: Book, move: Move): Result<Exact> {
  const { item, lot, quantity, value, when } = move;
  if (value !== undefined) return answer(exact(value).neg());
  const used = exact(quantity).neg();
  if (book.settings.valuation === 'Average')
    return andThen(unitCost(book, item, when), (average) => answer(average.times(used)));
  const key = nameKey(lot);
  const ofLot = shelfAt(book, item, when).layers.find((layer) => nameKey(layer.lot) === key);
  return lot === '' || ofLot?.unitValue === undefined
    ? notYet(
        `Entry ${move.entry} in LedgerLines used ${item.name} without a Value. Fill in what it was worth, or the Lot it came from.`,
      )
    : answer(ofLot.unitValue.times(used));
}

function standardCost(book: Book, item: Item, batch: Batch): Result<Exact> {
  const pack = packUnitCost(item);
  return pack === undefined ? unitCost(book, item, batch.poured) : answer(pack);
}

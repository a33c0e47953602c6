import type { Book, Item, Soap } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, sum } from '../kernel/exact.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { materialsPerG } from '../recipe/materials-per-g.ts';
import { USUAL_BARS } from '../recipe/plain-plan.ts';
import { unitCost } from '../stock/valuation.ts';
import { barCost } from './bar-cost.ts';
import { costOf } from './unit-costs.ts';

/**
 * What a unit of an item costs by the ledger or, for soap and bars that the ledger has never had,
 * what its materials cost by the recipe.
 */
export function unitCostOrRecipe(book: Book, item: Item, asOf: Day): Result<Exact> {
  const known = unitCost(book, item, asOf);
  if (known.ok || item.kind === 'material') return known;
  if (item.kind === 'leftover') return soapCostPerG(book, item.soap, asOf);
  if (item.kind === 'spare') {
    const gPerPiece = item.mold.fillG.div(item.mold.cavities);
    return andThen(soapCostPerG(book, item.soap, asOf), (perG) => answer(perG.times(gPerPiece)));
  }
  return andThen(barCost(book, item.design, USUAL_BARS, asOf), ({ lines }) =>
    answer(sum(lines.filter(({ kind }) => kind === 'material').map(({ perBar }) => perBar))),
  );
}

function soapCostPerG(book: Book, soap: Soap, asOf: Day): Result<Exact> {
  return andThen(costOf(book, materialsPerG(soap), asOf), (lines) =>
    answer(sum(lines.map(({ cost }) => cost))),
  );
}

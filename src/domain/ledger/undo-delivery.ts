import type { Book, Item, Lot, Move } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { exact, sum } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { live } from '../stock/reversals.ts';
import { shelfAt } from '../stock/valuation.ts';

/**
 * The lots of a delivery that can be taken back as if they never came. Refused while a line of the ledger
 * names one of them, or took from one without naming it, or under Average was worked out with it in the
 * average: then stock and costs would no longer be what was written. `lots` are their names; those that
 * are gone from Lots are passed over, since they were taken back already.
 */
export function undoDelivery(book: Book, lots: readonly string[]): Result<Lot[]> {
  const wanted = new Set(lots.map(nameKey));
  const standing = book.lots.filter(({ lot }) => wanted.has(nameKey(lot)));
  if (standing.length === 0)
    return wrong('None of its lots is in Lots any more: the delivery is undone already.');
  const why = standing.map((lot) => whyNot(book, lot)).find((said) => said !== undefined);
  return why === undefined ? answer(standing) : wrong(why);
}

function whyNot(book: Book, lot: Lot): string | undefined {
  const why = namedBy(book, lot) ?? usedUnnamed(book, lot) ?? averagedWith(book, lot);
  return why === undefined
    ? undefined
    : `Lot ${lot.lot} of ${lot.material.name} can't be undone, since ${why}. Put the quantity right by a count instead, and a wrong price in Lots.`;
}

/** Lines of the ledger keep the lots they name, taken back or not. */
function namedBy({ ledger }: Book, { lot }: Lot): string | undefined {
  const naming = [...ledger.moves].filter((move) => nameKey(move.lot) === nameKey(lot));
  return naming.length === 0 ? undefined : `it is named by ${linesSaid(naming)}`;
}

/** What names no lot, or more of another than there was, is taken from the next in turn. */
function usedUnnamed(book: Book, { lot, material, quantity }: Lot): string | undefined {
  const layers = shelfAt(book, itemOfMaterial(material), Infinity).named(lot);
  const left = sum(layers.map((layer) => layer.quantity));
  if (left.eq(exact(quantity))) return undefined;
  const unit = material.unit === 'each' ? '' : ` ${material.unit}`;
  return `${exact(quantity).minus(left).toString()}${unit} of it went to lines of the ledger that name no lot, or that took more of another lot than there was`;
}

/** Under Average each line since was valued with this lot among the rest. */
function averagedWith(book: Book, { material, received }: Lot): string | undefined {
  if (book.settings.valuation !== 'Average') return undefined;
  const item: Item = itemOfMaterial(material);
  const since = live(book.ledger.moves).filter(
    (move) =>
      move.item.kind === 'material' &&
      nameKey(move.item.name) === nameKey(item.name) &&
      Math.floor(move.when) >= Math.floor(received),
  );
  return since.length === 0
    ? undefined
    : `its cost is in the average of ${linesSaid(since)}, from its day or later`;
}

const MOST_NAMED = 3;

/** Lines of the ledger by their entries, and the batch where one made them. */
function linesSaid(moves: readonly Move[]): string {
  const said = moves
    .slice(0, MOST_NAMED)
    .map(({ entry, batch }) => (batch === '' ? entry : `${entry} (batch ${batch})`));
  const more = moves.length - said.length;
  const rest = more > 0 ? ` and ${String(more)} more` : '';
  return `ledger ${moves.length === 1 ? 'line' : 'lines'} ${said.join(', ')}${rest}`;
}

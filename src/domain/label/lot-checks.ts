import type { Book, Design, Lot, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { count } from '../kernel/count.ts';
import { type Day, isoDate } from '../kernel/day.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { isPast } from '../stock/layer.ts';
import { stockAt } from '../stock/valuation.ts';
import type { Leaving } from '../trace/flows.ts';
import { batchKeyOf, sourcesOfBatches } from '../trace/reach.ts';
import { type CheckLine, unknownLine } from './check-line.ts';
import type { Composition } from './composition.ts';

const SOURCE = 'Best before in Lots';

/** Lots of the bar's materials past their best before: on the shelf today, or used in the design's batches. */
export function lotChecks(
  book: Book,
  design: Design,
  composition: Composition,
  today: Day,
): CheckLine[] {
  const materials = composition.materials.map(({ material }) => material);
  return [...onHandChecks(book, materials, today), ...usedChecks(book, design, materials)];
}

function onHandChecks(book: Book, materials: readonly Material[], today: Day): CheckLine[] {
  const lots = materials.flatMap((material) => lotsOnHand(book, material, today));
  const expired = lots.filter(({ bestBefore }) => isPast(bestBefore, today));
  const undated = lots.filter(({ bestBefore }) => bestBefore === undefined);
  const lines = expired.map(({ lot, material, bestBefore = today }): CheckLine => ({
    check: `Expired lot on hand: ${lot} (${material.name})`,
    value: isoDate(bestBefore),
    limit: isoDate(today),
    result: 'over',
    source: SOURCE,
  }));
  if (undated.length > 0) {
    const names = undated.map(({ lot }) => lot).join(', ');
    lines.push(unknownLine('Lots on hand without a Best before', names, `Fill in ${SOURCE}`));
  }
  if (lines.length > 0) return lines;
  return lots.length === 0
    ? [unknownLine('Expired lots on hand', 'no lot on hand', SOURCE)]
    : [
        {
          check: 'Expired lots on hand',
          value: `none of ${lots.length}`,
          limit: isoDate(today),
          result: 'ok',
          source: SOURCE,
        },
      ];
}

function lotsOnHand(book: Book, material: Material, today: Day): Lot[] {
  const shelf = stockAt(book, itemOfMaterial(material), today).filled;
  const held = new Set(shelf.map(({ lot }) => nameKey(lot)));
  return book.lots
    .filter((lot) => lot.material === material && held.has(nameKey(lot.lot)))
    .sort((a, b) => compareNames(a.lot, b.lot));
}

function usedChecks(book: Book, design: Design, materials: readonly Material[]): CheckLine[] {
  const batches = [...book.batches].filter(([, batch]) => batch.design === design);
  const uses = sourcesOfBatches(
    book,
    batches.map(([key]) => key),
  );
  // Through leftovers a batch may lead back to what this design has none of.
  const dated = uses.filter(
    ({ lot, item }) =>
      lot !== undefined && item.kind === 'material' && materials.includes(item.material),
  );
  if (dated.length === 0)
    return [unknownLine('Expired lots used', 'no batch with lots yet', SOURCE)];
  const lots = new Map(book.lots.map((lot) => [nameKey(lot.lot), lot]));
  const expired = dated.flatMap((use) => expiredUse(use, lots.get(use.lot ?? '')));
  const once = new Map(expired.map((line) => [line.check, line]));
  if (once.size > 0) return [...once.values()].sort((a, b) => compareNames(a.check, b.check));
  const isUndated = dated.some(({ lot }) => lots.get(lot ?? '')?.bestBefore === undefined);
  return [
    {
      check: 'Expired lots used',
      value: `none known in ${count(batches.length, 'batch', 'batches')}`,
      limit: 'day of the pour',
      result: isUndated ? 'unknown' : 'ok',
      source: isUndated ? 'Some lots used have no Best before in Lots' : SOURCE,
    },
  ];
}

function expiredUse(use: Leaving, lot: Lot | undefined): CheckLine[] {
  if (lot?.bestBefore === undefined || !isPast(lot.bestBefore, use.move.when)) return [];
  return [
    {
      check: `Expired lot used: ${lot.lot} (${lot.material.name}) in ${batchKeyOf(use) === '' ? 'no batch' : `batch ${use.move.batch}`}`,
      value: isoDate(lot.bestBefore),
      limit: isoDate(use.move.when),
      result: 'over',
      source: SOURCE,
    },
  ];
}

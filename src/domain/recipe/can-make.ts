import type { Book, Design } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import { onHand } from '../stock/on-hand.ts';
import { plainQuantities } from './plain-plan.ts';

/** Past this many bars stock is no limit. */
const NO_LIMIT_BARS = 1 << 19;

/** Most whole good bars that the materials on hand allow, without leftovers or spares. */
export function canMake(book: Book, design: Design, asOf: Day): Result<number> {
  const one = plainQuantities(design, 1, book.settings);
  if (!one.ok) return one;
  if (one.value.size === 0)
    return notYet(`${design.name} uses no materials, so stock is no limit.`);
  // Need never falls as bars rise: double until stock is short, then halve in between.
  let enough = 0;
  let short = 1;
  while (short <= NO_LIMIT_BARS && isEnough(book, design, short, asOf)) {
    enough = short;
    short *= 2;
  }
  if (short > NO_LIMIT_BARS)
    return notYet(`Stock is no limit for ${design.name}: it allows over ${NO_LIMIT_BARS} bars.`);
  while (short - enough > 1) {
    const middle = Math.floor((enough + short) / 2);
    if (isEnough(book, design, middle, asOf)) enough = middle;
    else short = middle;
  }
  return answer(enough);
}

function isEnough(book: Book, design: Design, bars: number, asOf: Day): boolean {
  const needs = plainQuantities(design, bars, book.settings);
  return (
    needs.ok &&
    Array.from(needs.value).every(([material, quantity]) =>
      quantity.lte(onHand(book, itemOfMaterial(material), asOf)),
    )
  );
}

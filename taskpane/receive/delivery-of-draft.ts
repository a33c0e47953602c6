import type { Book, Material } from '../../src/domain/book/book.ts';
import { findMaterial } from '../../src/domain/book/find.ts';
import { type Day, readDay } from '../../src/domain/kernel/day.ts';
import { type Exact, zero } from '../../src/domain/kernel/exact.ts';
import { all, andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import type { DeliveredLine, Delivery } from '../../src/domain/ledger/receive.ts';
import type { AmountOf } from '../../src/domain/measure/typed-amount.ts';
import { day } from '../format.ts';
import { moneyIn, quantityIn, readTyped } from '../typed-number.ts';
import type { ReceiveDraft, TypedLot } from './draft.ts';

/** The delivery as the draft tells it, or what is missing or can't be. */
export function deliveryOfDraft(book: Book, draft: ReceiveDraft, today: Day): Result<Delivery> {
  const received = readDay(draft.received);
  if (received === undefined) return wrong('Date received is blank. Choose the day.');
  if (received > today) {
    return wrong(
      `Date received is ${day(received)}, which is still to come. Choose today or before.`,
    );
  }
  const freight =
    draft.freight.trim() === ''
      ? answer(zero)
      : readTyped(draft.freight, 'Freight', moneyIn(book.settings.currency));
  return andThen(linesOfDraft(book, draft), (lines) =>
    andThen(freight, (paid) =>
      answer({
        id: draft.id,
        received,
        supplier: draft.supplier.trim(),
        freight: paid,
        shareFreightBy: draft.shareBy,
        lines,
      }),
    ),
  );
}

/** What came, or what is missing in a line; lines of which nothing was said are passed over. */
export function linesOfDraft(book: Book, { lines }: ReceiveDraft): Result<DeliveredLine[]> {
  const told = lines.flatMap((line, index) =>
    Object.values(line).every((text) => text.trim() === '') ? [] : [readLot(book, line, index)],
  );
  return told.length === 0 ? wrong('Nothing has come yet. Choose the first material.') : all(told);
}

function readLot(book: Book, line: TypedLot, index: number): Result<DeliveredLine> {
  if (line.material === '') {
    return wrong(`Choose the material of line ${String(index + 1)}, or remove the line.`);
  }
  const found = findMaterial(book, line.material);
  if (!found.ok) {
    return wrong(`"${line.material}" is no longer in Materials. Put it back, or choose another.`);
  }
  const material = found.value;
  const bestBefore = readDay(line.bestBefore);
  if (line.bestBefore !== '' && bestBefore === undefined) {
    return wrong(`Best before of ${material.name} is not a day. Choose one, or blank it.`);
  }
  return andThen(quantityOf(material, line), (quantity) =>
    andThen(
      readTyped(line.paid, `Paid for ${material.name}`, moneyIn(book.settings.currency)),
      (paid) => answer({ material, lot: line.lot.trim(), quantity, paid, bestBefore }),
    ),
  );
}

/** In the stock unit, by packs or as it stands. */
export function quantityOf(material: Material, { packs, quantity }: TypedLot): Result<Exact> {
  const { name, packSize } = material;
  const isByPacks = packs.trim() !== '' && packSize !== undefined;
  if (isByPacks && quantity.trim() !== '') {
    return wrong(`Give packs or a quantity of ${name}, not both.`);
  }
  if (!isByPacks && quantity.trim() === '') {
    const ways = packSize === undefined ? 'a quantity' : 'packs, or a quantity';
    return wrong(`How much of ${name} came? Type ${ways}.`);
  }
  if (!isByPacks)
    return moreThanNothing(quantity, `Quantity of ${name}`, quantityIn(material.unit, material));
  return andThen(moreThanNothing(packs, `Packs of ${name}`, PACKS), (many) =>
    answer(many.times(packSize)),
  );
}

const PACKS: AmountOf = { kind: 'number' };

function moreThanNothing(typed: string, what: string, amountOf: AmountOf): Result<Exact> {
  return andThen(readTyped(typed, what, amountOf), (value) =>
    value.isZero() ? wrong(`${what} is 0. Type more than 0.`) : answer(value),
  );
}

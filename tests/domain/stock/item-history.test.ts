import { describe, expect, it } from 'vitest';
import type { Move } from '../../../src/domain/book/book.ts';
import { findItem } from '../../../src/domain/book/find.ts';
import type { ItemHistory } from '../../../src/domain/stock/item-history.ts';
import { indexOf } from '../../../src/domain/stock/ledger-index.ts';
import { ledgerOf, readTables, sure } from '../../support/ledger-of.ts';
import { workshop } from '../../support/small-book.ts';

const book = readTables(workshop);
const item = sure(findItem(book, 'Box'));
const used = (entry: string, quantity: number): Move => ({
  entry,
  when: 45_350,
  reason: 'used',
  item,
  quantity,
  lot: 'B1',
  value: undefined,
  batch: '',
  by: '',
  note: '',
});

/** The history of boxes in a ledger of these moves, among others of another item. */
function historyOf(...moves: readonly Move[]): ItemHistory {
  const other = { ...used('O1', -1), item: sure(findItem(book, 'Glycerin')) };
  const histories = [...indexOf({ ...book, ledger: ledgerOf([...moves, other]) }).values()];
  const found = histories.find(({ moves: [first] }) => first?.item.name === 'Box');
  if (found === undefined) throw new Error('no history');
  return found;
}

/** Answers of an item are handed on from one book to the next just where its moves are the same. */
describe('two histories of an item', () => {
  const one = historyOf(used('E1', -5), used('E2', -7));

  it.each([
    ['the same moves', [used('E1', -5), used('E2', -7)], true],
    ['another quantity in the first', [used('E1', -6), used('E2', -7)], false],
    ['another quantity in the last', [used('E1', -5), used('E2', -8)], false],
    ['another note', [used('E1', -5), { ...used('E2', -7), note: 'spilt' }], false],
    ['another order', [used('E2', -7), used('E1', -5)], false],
    ['one more', [used('E1', -5), used('E2', -7), used('E3', -1)], false],
    ['one less', [used('E1', -5)], false],
  ])('of %s: %s', (_, moves, isSame) => {
    expect(historyOf(...moves).hasSameMoves(one)).toBe(isSame);
    expect(one.hasSameMoves(historyOf(...moves))).toBe(isSame);
  });

  it('are told apart by either half of a line’s print', () => {
    const withPrints = (high: number, low: number): ItemHistory => {
      const history = historyOf(used('E1', -5));
      history.ledger.prints.high[0] = high;
      history.ledger.prints.low[0] = low;
      return history;
    };
    expect(withPrints(1, 2).hasSameMoves(withPrints(1, 2))).toBe(true);
    expect(withPrints(1, 2).hasSameMoves(withPrints(1, 3))).toBe(false);
    expect(withPrints(1, 2).hasSameMoves(withPrints(4, 2))).toBe(false);
  });
});

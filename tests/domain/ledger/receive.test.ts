import { describe, expect, it } from 'vitest';
import { findItem, findMaterial } from '../../../src/domain/book/find.ts';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { type Delivery, receiveDelivery } from '../../../src/domain/ledger/receive.ts';
import { unitCost } from '../../../src/domain/stock/valuation.ts';
import { changeForDelivery } from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import { applyChange } from '../../support/apply-change.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { day } from '../../support/pour-of.ts';
import { tableData, workshop } from '../../support/small-book.ts';

const book = readTables(workshop);
const RECEIVED = day('2024-03-05');

const line = (material: string, quantity: string, paid: string, lot = '') => ({
  material: sure(findMaterial(book, material)),
  lot,
  quantity: new Exact(quantity),
  paid: new Exact(paid),
  bestBefore: undefined,
});

const delivery = (differs: Partial<Delivery> = {}): Delivery => ({
  id: 'D1',
  received: RECEIVED,
  supplier: 'Cove Supply',
  freight: new Exact(10),
  shareFreightBy: 'value',
  lines: [line('Clear base', '1000', '20'), line('White base', '2000', '10', 'W9')],
  ...differs,
});

describe('receiveDelivery', () => {
  it.each([
    // 10 by 20 : 10, and by 1000 g : 2000 g, to the cent by the largest remainder.
    ['value', ['6.67', '3.33']],
    ['weight', ['3.33', '6.67']],
  ] as const)('shares the freight by %s', (shareFreightBy, freight) => {
    const lots = sure(receiveDelivery(book, delivery({ shareFreightBy })));
    expect(lots.map((lot) => lot.freight.toString())).toEqual(freight);
    expect(lots.map(({ lot }) => lot)).toEqual(['D1.01', 'W9']);
  });

  it('counts millilitres by their density, so a heavy liquid carries more', () => {
    // 1000 ml at 0.8 g/ml against 800 g.
    const lines = [line('Alcohol', '1000', '1'), line('Clear base', '800', '99')];
    const lots = sure(receiveDelivery(book, delivery({ shareFreightBy: 'weight', lines })));
    expect(lots.map((lot) => lot.freight.toString())).toEqual(['5', '5']);
  });

  it('is in stock at its landed cost once it is written', () => {
    const lots = sure(receiveDelivery(book, delivery({ lines: [line('Box', '10', '4')] })));
    const change = sure(changeForDelivery(lots, findTables(tableData(workshop))));
    const after = readTables(applyChange(workshop, change));
    // 50 boxes for 20, then 10 for 4 + 10 of freight.
    expect(
      sure(unitCost(after, sure(findItem(after, 'Box')), RECEIVED))
        .times(60)
        .toNumber(),
    ).toBeCloseTo(34, 12);
  });

  it.each([
    ['nothing', { lines: [] }, /Nothing was received/],
    ['negative freight', { freight: new Exact(-1) }, /Freight is -1/],
    ['a lot that is there', { lines: [line('Box', '1', '1', 'b1')] }, /Lot b1 is in Lots already/],
    [
      'one lot number twice',
      { lines: [line('Box', '1', '1', 'X'), line('Box', '1', '1', 'x')] },
      /Lot x is in Lots/,
    ],
    ['no quantity', { lines: [line('Box', '0', '1')] }, /Quantity of Box is 0/],
    ['a negative price', { lines: [line('Box', '1', '-1')] }, /Paid for Box is -1/],
    [
      'freight by weight of things without one',
      { shareFreightBy: 'weight', lines: [line('Box', '1', '1')] },
      /by value instead/,
    ],
    [
      'goods past their best before',
      { lines: [{ ...line('Orange oil', '1', '1'), bestBefore: day('2024-01-01') }] },
      /past its best before/,
    ],
  ] as const)('refuses %s with a sentence', (_, differs, sentence) => {
    const result = receiveDelivery(book, delivery(differs));
    expect(!result.ok && result.failure.sentence).toMatch(sentence);
  });
});

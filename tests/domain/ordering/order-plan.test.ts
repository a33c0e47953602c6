import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../src/domain/kernel/day.ts';
import { sum, zero } from '../../../src/domain/kernel/exact.ts';
import { type OrderLine, orderPlan } from '../../../src/domain/ordering/order-plan.ts';
import { supplies } from '../../../src/domain/supplies/supplies.ts';
import { demoTables } from '../../../src/starter/demo/demo-tables.ts';
import { demoDay } from '../../../src/starter/demo/season.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { type Range, table, type Tables } from '../../support/small-book.ts';

const from = 46_000;
const day = (at: number): string => isoDate(from + at);

/** Bars of 100 g of base in a box and a sleeve; one supplier sends base and boxes, another sleeves. */
const stall = (
  suppliers: Range,
  breaks: Range = table('Material | From packs | Pack price'),
): Tables => ({
  Settings: table('Setting | Value', ['Currency', 'USD'], ['Buffer days', 2]),
  Materials: table(
    'Material | Kind | Unit | Pack size | Pack price | Lead days | Supplier',
    ['Base', 'base', 'g', 1000, 10, 8, 'Here'],
    ['Box', 'packaging', 'each', 10, 3, '', 'here'],
    ['Sleeve', 'packaging', 'each', 5, 1, 3, 'There'],
  ),
  Designs: table('Design', ['Wave'], ['Gull']),
  Layers: table(
    'Design | Layer | Part | Item | Mold | Per bar | Per',
    ['Wave', '1', 'pour', 'Base', '', 100, 'g'],
    ['Wave', '2', 'pack', 'Box', '', 1, 'each'],
    ['Gull', '1', 'pour', 'Base', '', 100, 'g'],
    ['Gull', '2', 'pack', 'Sleeve', '', 1, 'each'],
  ),
  Plan: table(
    'Plan line | Design | Bars | Ready by',
    ['P1', 'Wave', 25, from + 30],
    ['P2', 'Gull', 12, from + 40],
  ),
  Suppliers: suppliers,
  PriceBreaks: breaks,
});
const terms = (...rows: Range): Range =>
  table('Supplier | Carriage | Free from | Lead days', ...rows);

const shown = (tables: Tables) =>
  sure(orderPlan(readTables(tables), from, { reuse: false })).map(
    ({ supplier, orderBy, material, packs, cost, carriage }) => [
      supplier,
      isoDate(orderBy),
      material.name,
      packs,
      cost?.toNumber(),
      carriage.toNumber(),
    ],
  );

describe('orderPlan', () => {
  it('orders each on its day where nobody asks for carriage', () => {
    // 25 bars take 2.5 kg and 25 boxes, 12 bars 1.2 kg more, of which 0.5 kg is there, and 12 sleeves.
    expect(shown(stall(terms(['Here', '', '', 5])))).toEqual([
      ['Here', day(20), 'Base', 3, 30, 0],
      ['Here', day(23), 'Box', 3, 9, 0],
      ['Here', day(30), 'Base', 1, 10, 0],
      ['There', day(35), 'Sleeve', 3, 3, 0],
    ]);
  });

  it('joins what one supplier sends, and shares carriage by cost', () => {
    // 40 of base and 9 of boxes: 9.80 parts as 8 and 1.80.
    expect(shown(stall(terms(['Here', 9.8, '', 5], ['There', 2, '', ''])))).toEqual([
      ['Here', day(20), 'Base', 4, 40, 8],
      ['Here', day(20), 'Box', 3, 9, 1.8],
      ['There', day(35), 'Sleeve', 3, 3, 2],
    ]);
  });

  it('reaches free carriage, or another price, only where that costs less', () => {
    // 49 of goods: one more box is 3, less than the carriage of 9.80.
    expect(shown(stall(terms(['Here', 9.8, 52, 5]))).slice(0, 2)).toEqual([
      ['Here', day(20), 'Base', 4, 40, 0],
      ['Here', day(20), 'Box', 4, 12, 0],
    ]);
    expect(shown(stall(terms(['Here', 2.9, 52, 5])))[1]).toEqual([
      ...['Here', day(20), 'Box', 3, 9, 0.53],
    ]);
    const breaks = table('Material | From packs | Pack price', ['Box', 4, 2.2]);
    expect(shown(stall(terms(['Here', '', '', 5]), breaks))[1]).toEqual([
      ...['Here', day(23), 'Box', 4, 8.8, 0],
    ]);
  });

  it('orders nothing so early that it would not keep', () => {
    const dated: Tables = {
      ...stall(terms(['Here', 9.8, '', 5])),
      Lots: table('Lot | Material | Received | Quantity | Paid | Best before', [
        ...['L1', 'Base', from - 60, 1, 1, from - 51],
      ]),
    };
    // Base keeps nine days: what is needed on day 40 may come on day 31 at the soonest, so it is ordered on day 23.
    const base = shown(dated).filter(([, , name]) => name === 'Base');
    expect(base.map(([, orderBy, , packs]) => [orderBy, packs])).toEqual([
      [day(20), 3],
      [day(30), 2],
    ]);
  });

  it('says nothing of packs that are not known, and fails where there is no plan', () => {
    const [headers = [], ...rows] = stall(terms())['Materials'] ?? [];
    const unknown = rows.map((row) => (row[0] === 'Box' ? row.with(3, '') : row));
    expect(shown({ ...stall(terms()), Materials: [headers, ...unknown] })).toContainEqual([
      ...['Here', day(28), 'Box', undefined, undefined, 0],
    ]);
    const none = orderPlan(
      readTables({ ...stall(terms()), Plan: table('Plan line | Design | Bars | Ready by') }),
      from,
      { reuse: false },
    );
    expect(none.ok ? '' : none.failure.kind).toBe('not yet');
  });
});

describe('on the demo', () => {
  const book = readTables(
    Object.fromEntries(demoTables().map(({ name, headers, rows }) => [name, [headers, ...rows]])),
  );
  const options = { reuse: false };
  const lines = sure(orderPlan(book, demoDay, options));
  const asked = sure(supplies(book, demoDay, options)).lines.filter(({ net }) => !net.isZero());

  it('brings enough of each material, never later than SUPPLIES asks', () => {
    for (const { material, packs, orderBy } of asked) {
      const ordered = lines.filter((line) => line.material.name === material.name);
      expect(
        ordered.reduce((total, line) => total + (line.packs ?? 0), 0),
        material.name,
      ).toBeGreaterThanOrEqual(packs?.toNumber() ?? 0);
      expect(Math.min(...ordered.map((line) => line.orderBy)), material.name).toBeLessThanOrEqual(
        orderBy ?? -Infinity,
      );
    }
    expect(asked.length).toBeGreaterThan(3);
  });

  it('pays each supplier’s carriage once for an order, or not at all', () => {
    const orders = new Map<string, OrderLine[]>();
    for (const line of lines) {
      const key = `${line.supplier} ${line.orderBy}`;
      orders.set(key, [...(orders.get(key) ?? []), line]);
    }
    for (const order of orders.values()) {
      const goods = sum(order.map(({ cost }) => cost ?? zero));
      const { terms: at } = order[0]?.material ?? {};
      const due = at === undefined || goods.gte(at.freeFrom ?? Infinity) ? zero : at.carriage;
      expect(sum(order.map(({ carriage }) => carriage)).toNumber()).toBe(due.toNumber());
    }
  });
});

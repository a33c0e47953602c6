import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Advice } from '../../../src/domain/now/advice.ts';
import { adviceKinds } from '../../../src/domain/now/advice.ts';
import { withoutPoint } from '../../../src/domain/now/now-order.ts';
import { HORIZON_DAYS, MOST_ADVICE, whatNow } from '../../../src/domain/now/what-now.ts';
import { readTables } from '../../support/ledger-of.ts';
import { day } from '../../support/pour-of.ts';
import { type Tables, withRows, workshop } from '../../support/small-book.ts';

const ask = (tables: Tables, today: string): readonly Advice[] =>
  whatNow(readTables(tables), day(today));
const titles = (tables: Tables, today: string): string[] =>
  ask(tables, today).map(({ title }) => title);

/** A move of boxes out of lot B1; 50 came on 2024-01-05. */
const boxes = (entry: string, when: string, reason: string, quantity: number) => [
  entry,
  when,
  reason,
  'Box',
  quantity,
  'B1',
  '',
  '',
  '',
  '',
];
const saleOf = (sale: string, bars: number) => [
  sale,
  '2024-12-06',
  'Tide Pool',
  bars,
  9,
  'Harbour Fair',
  0,
];
const usedOften = withRows(
  workshop,
  'LedgerLines',
  ...Array.from({ length: 8 }, (_, index) => boxes(`U${index}`, `2024-01-1${index}`, 'used', -1)),
);
const low = withRows(workshop, 'LedgerLines', boxes('U1', '2024-05-30', 'used', -45));

describe('whatNow', () => {
  it('is nothing while nothing is pressing', () => {
    expect(ask(workshop, '2024-03-10')).toEqual([]);
  });

  it('orders what is low, with packs and the reason', () => {
    // By hand: 4.5 a day, SD 45 ÷ √10 = 14.23, lead 3 days, z(95 %) 1.6449: 13.5 + 1.6449 × 14.23 × √3 =
    // 54.04, so 5 left are low; a pack of 50 brings them over it. The plan's 12 bars lack 12 − 5 boxes.
    const [advice, ...others] = ask(low, '2024-06-01');
    expect(others).toEqual([]);
    expect(advice).toMatchObject({ kind: 'order', title: 'Order Box', due: day('2024-06-01') });
    expect(advice?.reasons).toEqual([
      '1 pack of Box, today. 5 on hand; order again at 55 or less by the usual formula; Reorder tries it on your own days. The plan is short of 7.',
    ]);
  });

  it('puts one supplier’s materials into one order', () => {
    const both = withRows(
      workshop,
      'LedgerLines',
      ['U1', '2024-05-30', 'used', 'Clear base', -4900, 'C2', '', '', '', ''],
      ['U2', '2024-05-30', 'used', 'White base', -1900, 'W1', '', '', '', ''],
    );
    // Clear, by hand: 490 a day, SD 4900 ÷ √10 = 1549.5, lead 6 ± 2 days, z(90 %) 1.2816: 2940 + 1.2816 ×
    // √(6 × 1549.5² + 490² × 4) = 7964; 100 are left, so 7864 are short: 2 packs of 5000. White: 190 a day,
    // SD 600.8, z(95 %) 1.6449: 1140 + 1.6449 × 600.8 × √6 = 3561: 1 pack.
    const [advice] = ask(both, '2024-06-01');
    expect(advice?.title).toBe('Order 2 materials from Cove Supply');
    expect(advice?.reasons.map((reason) => reason.split(',')[0])).toEqual([
      '2 packs of Clear base',
      '1 pack of White base',
    ]);
  });

  it('pours for the plan, and says for what', () => {
    const [advice] = ask(workshop, '2024-11-28').filter(({ kind }) => kind === 'pour');
    expect(advice?.title).toMatch(/12 bars of Tide Pool$/);
    expect(advice?.reasons[0]).toMatch(
      /since plan line P1 is to be ready by 2024-12-05 for Harbour Fair\.$/,
    );
    expect(advice?.due).toBeLessThanOrEqual(day('2024-12-05'));
  });

  it('says that a line can’t be ready any more', () => {
    const [advice] = ask(workshop, '2024-12-05').filter(({ kind }) => kind === 'pour');
    expect(advice).toMatchObject({
      title: 'See to 12 bars of plan line P1, Tide Pool',
      due: day('2024-12-05'),
    });
  });

  it('asks for the sales of a fair that is over, until they are there', () => {
    expect(titles(workshop, '2024-12-10')).toEqual(['Record the sales of Harbour Fair']);
    const sold = withRows(workshop, 'Sales', saleOf('S1', 1));
    expect(titles(sold, '2024-12-10')).toEqual([]);
    // Undone: S1.R takes S1 back. Then sold after all, as S2.
    const undone = withRows(sold, 'Sales', saleOf('S1.R', -1));
    expect(titles(undone, '2024-12-10')).toEqual(['Record the sales of Harbour Fair']);
    expect(titles(withRows(undone, 'Sales', saleOf('S2', 2)), '2024-12-10')).toEqual([]);
    // A fair of last summer was missed, or sold at by another book.
    expect(titles(workshop, '2025-02-10')).toEqual([]);
  });

  it('knows of which materials it can’t say when they are low', () => {
    const names = withoutPoint(readTables(low), day('2024-06-01')).map(({ name }) => name);
    // By hand: lead days stand for both bases, the mica and the box; of these only the box was used.
    expect(names).toContain('Clear base');
    expect(names).toContain('Alcohol');
    expect(names).not.toContain('Box');
  });

  it('sees to bars that have just become ready', () => {
    const made = withRows(
      withRows(workshop, 'Batches', [
        'B1',
        '2024-05-30',
        'Tide Pool',
        12,
        12,
        0,
        '',
        '',
        2,
        '2024-05-31',
        'posted',
        '',
        '',
      ]),
      'LedgerLines',
      ['M1', '2024-05-30', 'made', 'Tide Pool', 12, 'B1', 24, 'B1', '', ''],
    );
    const [advice] = ask(made, '2024-06-01');
    expect(advice).toMatchObject({
      kind: 'sell',
      title: 'Price and pack 12 bars of Tide Pool',
      reasons: ['Batch B1 is ready since 2024-05-31. The next fair is Harbour Fair, 2024-12-06.'],
    });
    expect(ask(made, '2024-06-20')).toEqual([]);
  });

  it('counts only the bars of the batch that became ready, not all of its design', () => {
    const line = (batch: string, poured: string, ready: string) =>
      [...[batch, poured, 'Tide Pool', 12, 12, 0, '', '', 2], ready, 'posted', '', ''] as const;
    const made = (entry: string, on: string, bars: number, batch: string) =>
      [entry, on, bars > 0 ? 'made' : 'sold', 'Tide Pool', bars, batch, 2 * bars] as const;
    const tables = withRows(
      withRows(
        workshop,
        'Batches',
        line('B1', '2024-04-01', '2024-04-02'),
        line('B2', '2024-05-28', '2024-05-30'),
        line('B3', '2024-05-30', '2024-05-31'),
      ),
      'LedgerLines',
      [...made('M1', '2024-04-01', 7, 'B1'), 'B1', '', ''],
      [...made('M2', '2024-05-28', 13, 'B2'), 'B2', '', ''],
      [...made('S1', '2024-05-31', -2, 'B2'), '', '', ''],
    );
    expect(ask(tables, '2024-06-01')[0]).toMatchObject({
      title: 'Price and pack 11 bars of Tide Pool',
      reasons: ['Batch B2 is ready since 2024-05-30. The next fair is Harbour Fair, 2024-12-06.'],
    });
    const both = withRows(tables, 'LedgerLines', [
      ...made('M3', '2024-05-30', 5, 'B3'),
      'B3',
      '',
      '',
    ]);
    expect(ask(both, '2024-06-01')[0]).toMatchObject({
      title: 'Price and pack 16 bars of Tide Pool',
      reasons: [
        'Batch B2: 11 bars, ready since 2024-05-30. Batch B3: 5 bars, ready since 2024-05-31. The next fair is Harbour Fair, 2024-12-06.',
      ],
    });
  });

  it('counts what was used often and long not counted', () => {
    // 2024-01-05 to 2024-06-01: 26 + 29 + 31 + 30 + 31 + 1 days.
    expect(
      ask(usedOften, '2024-06-01').map(({ kind, title, reasons }) => [kind, title, reasons]),
    ).toEqual([['count', 'Count Box', ['It was used 8 times in 148 days and never counted.']]]);
    const counted = withRows(usedOften, 'LedgerLines', boxes('K1', '2024-05-20', 'counted', -1));
    expect(ask(counted, '2024-06-01')).toEqual([]);
    const takenBack = withRows(usedOften, 'LedgerLines', [
      'U1.R',
      '2024-02-01',
      'reversed',
      'Box',
      1,
      'B1',
      '',
      '',
      '',
      'U1',
    ]);
    expect(ask(takenBack, '2024-06-01')).toEqual([]);
  });

  it('puts on one day what must be sent first, then making, selling, counting', () => {
    // 10 boxes are low, yet enough for the plan's 6, so that the order is due today and not earlier.
    const some = withRows(workshop, 'LedgerLines', boxes('U1', '2024-05-30', 'used', -40));
    const fair = ['May Fair', '2024-05-25', 10, 0, 0, 5];
    const planned = withRows(some, 'Plan', ['P0', 'Tide Pool', 6, '2024-06-01', '']);
    const kinds = ask(withRows(planned, 'Fairs', fair), '2024-06-01');
    expect(kinds.map(({ kind, due }) => [kind, due - day('2024-06-01')])).toEqual([
      ['order', 0],
      ['pour', 0],
      ['sell', 0],
    ]);
  });

  it('lets no third order hide something else', () => {
    const out = (entry: string, item: string, quantity: number, lot: string) => [
      entry,
      '2024-05-30',
      'used',
      item,
      quantity,
      lot,
      '',
      '',
      '',
      '',
    ];
    const all = withRows(
      usedOften,
      'LedgerLines',
      out('X1', 'Box', -41, 'B1'),
      out('X2', 'Clear base', -4900, 'C2'),
      out('X3', 'Blue mica', -99, 'M1'),
    );
    expect(ask(all, '2024-06-01').map(({ kind }) => kind)).toEqual(['order', 'order', 'count']);
  });

  it('is three at most, each due soon with its reasons, in order, on any day', () => {
    const full = withRows(usedOften, 'LedgerLines', boxes('X1', '2024-05-30', 'used', -41));
    fc.assert(
      fc.property(fc.integer({ min: day('2024-01-05'), max: day('2025-03-01') }), (today) => {
        const advice = whatNow(readTables(full), today);
        expect(advice.length).toBeLessThanOrEqual(MOST_ADVICE);
        for (const { title, reasons, due } of advice) {
          expect(title).not.toBe('');
          expect(due).toBeLessThanOrEqual(today + HORIZON_DAYS);
          for (const reason of reasons) expect(reason).toMatch(/\.$/);
        }
        const rank = ({ due, kind }: Advice) => due * 10 + adviceKinds.indexOf(kind);
        expect(advice.map(rank)).toEqual(advice.map(rank).sort((a, b) => a - b));
      }),
      { numRuns: 60 },
    );
  });
});

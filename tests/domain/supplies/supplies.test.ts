import { describe, expect, it } from 'vitest';
import { isoDate } from '../../../src/domain/kernel/day.ts';
import { toCell } from '../../../src/domain/kernel/exact.ts';
import { cashByWeek } from '../../../src/domain/supplies/cash-by-week.ts';
import { openPlan } from '../../../src/domain/schedule/plan-lines.ts';
import { supplies, type SupplyPlan } from '../../../src/domain/supplies/supplies.ts';
import type { Tables } from '../../support/small-book.ts';
import { bookOf, on, refusal, season, sound } from './season-book.ts';

const from = on('2026-11-01');
const planOf = (tables: Tables, reuse = false): SupplyPlan =>
  sound(supplies(bookOf(tables), from, { reuse }));

/** One material's row as the sheet shows it. */
function row(plan: SupplyPlan, name: string) {
  const line = plan.lines.find(({ material }) => material.name === name);
  if (line === undefined) throw new Error(`no row for ${name}`);
  return {
    gross: toCell(line.gross),
    onHand: toCell(line.onHand),
    net: toCell(line.net),
    packs: line.packs && toCell(line.packs),
    orderBy: line.orderBy && isoDate(line.orderBy),
    cost: line.cost && toCell(line.cost),
    late: line.late,
  };
}

const lot = (
  id: string,
  material: string,
  quantity: number,
  bestBefore = '',
): (string | number)[] => [id, material, '2026-10-01', quantity, 1, bestBefore];

describe('one line of the plan', () => {
  const plan = [['P1', 'Brick', 20, '2026-12-05']];

  it('with nothing on hand: packs rounded up, ordered lead and buffer days ahead', () => {
    const found = planOf(season({ plan }));
    // 20 × 100 g; packs of 1000 g at 8; 5 + 3 days before 5 December.
    expect(row(found, 'Base')).toEqual({
      gross: 2000,
      onHand: 0,
      net: 2000,
      packs: 2,
      orderBy: '2026-11-27',
      cost: 16,
      late: false,
    });
    // 20 boxes are two packs of 10, and the supplier sells no fewer than three.
    expect(row(found, 'Box')).toMatchObject({ net: 20, packs: 3, orderBy: '2026-11-30', cost: 12 });
  });

  it('takes off what is on hand', () => {
    const found = planOf(season({ plan, lots: [lot('L1', 'Base', 1500), lot('L2', 'Box', 25)] }));
    expect(row(found, 'Base')).toMatchObject({ onHand: 1500, net: 500, packs: 1 });
    expect(row(found, 'Box')).toEqual({
      gross: 20,
      onHand: 25,
      net: 0,
      packs: 0,
      orderBy: undefined,
      cost: 0,
      late: false,
    });
    expect(found.lines.map(({ material }) => material.name)).toEqual(['Base', 'Box']);
  });

  it('leaves out lots past their best before today where the need is late already', () => {
    // Poured on 31 October at the latest: 3 × 50 g and two fills of 25 g for 72 tiles.
    const late = [['P1', 'Mosaic', 3, '2026-11-02']];
    const lots = [lot('L1', 'Base', 2000, '2026-10-31')];
    expect(row(planOf(season({ plan: late, lots })), 'Base')).toMatchObject({
      gross: 200,
      onHand: 0,
      net: 200,
    });
  });

  it('leaves out lots past their best before on the day of the need, and says so', () => {
    const lots = [lot('L1', 'Base', 1500, '2026-12-04'), lot('L2', 'Base', 700, '2026-12-05')];
    const found = planOf(season({ plan, lots }));
    expect(row(found, 'Base')).toMatchObject({ onHand: 700, net: 1300, packs: 2 });
    expect(found.notes.map(({ sentence }) => sentence)).toContain(
      '1500 g of Base will be past its best before when the plan needs it.',
    );
  });

  it('counts what is on its way if it comes in time', () => {
    const coming = (day: string) => [['L1', 'Base', day, 1500, 1, '']];
    expect(row(planOf(season({ plan, lots: coming('2026-12-05') })), 'Base').net).toBe(500);
    expect(row(planOf(season({ plan, lots: coming('2026-12-06') })), 'Base').net).toBe(2000);
  });

  it('flags a day to order that is over', () => {
    const soon = [['P1', 'Brick', 20, '2026-11-05']];
    const found = planOf(season({ plan: soon }));
    expect(row(found, 'Base')).toMatchObject({ orderBy: '2026-10-28', late: true });
    expect(row(found, 'Box')).toMatchObject({ orderBy: '2026-10-31', late: true });
  });

  it('needs nothing before today: no order is later than its lead time and Buffer days', () => {
    // To be poured on 31 October; today is 1 November, and Base takes 5 + 3 days.
    const late = [['P1', 'Mosaic', 3, '2026-11-02']];
    const base = row(planOf(season({ plan: late })), 'Base');
    expect(base).toMatchObject({ orderBy: '2026-10-24', late: true });
  });

  it('makes only the bars that are not on hand', () => {
    const moves = [['E1', '2026-10-02', 'made', 'Brick', 15, '', 30, '']];
    expect(row(planOf(season({ plan, moves })), 'Base').gross).toBe(500);
    const all = [['E1', '2026-10-02', 'made', 'Brick', 25, '', 30, '']];
    expect(planOf(season({ plan, moves: all })).lines).toEqual([]);
  });

  it('needs the materials on the day of the pour: hands-off hours before Ready by', () => {
    // 36 hours are two days; 5 + 3 days before 3 December.
    const mosaic = [['P1', 'Mosaic', 6, '2026-12-05']];
    // 6 × 24 tiles are 4 fills of 25 g; 6 × 50 g poured.
    expect(row(planOf(season({ plan: mosaic })), 'Base')).toMatchObject({
      gross: 400,
      orderBy: '2026-11-25',
    });
  });

  it('needs them earlier where the calendar has to pour earlier', () => {
    const settings = [
      ['Minutes per day', 70, ''],
      ['Rest days', 'Sat', ''],
    ];
    // 10 bricks a day (20 + 5 × 10 minutes), none on Saturday the 5th: the 4th and the 3rd.
    expect(row(planOf(season({ plan, settings })), 'Base').orderBy).toBe('2026-11-25');
  });

  it('takes a lead time of nothing, and says where one is missing', () => {
    const materials = [
      ['Base', 'base', 'g', 1000, 8, 0, ''],
      ['Box', 'packaging', 'each', '', '', '', ''],
    ];
    const found = planOf(season({ plan, materials }));
    expect(row(found, 'Base').orderBy).toBe('2026-12-02');
    expect(row(found, 'Box')).toMatchObject({
      net: 20,
      packs: undefined,
      cost: undefined,
      orderBy: '2026-12-02',
    });
    expect(found.notes.map(({ sentence }) => sentence)).toEqual([
      'Fill in Pack size for Box in Materials.',
      'Fill in Pack price for Box in Materials.',
      'Fill in Lead days for Box in Materials. Until then it is taken to come at once.',
    ]);
  });
});

describe('several lines', () => {
  const plan = [
    ['P2', 'Brick', 30, '2026-12-15'],
    ['P1', 'Brick', 10, '2026-12-05'],
  ];

  it('stock and bars go to the earliest line; the first shortage sets the day to order', () => {
    const moves = [['E1', '2026-10-02', 'made', 'Brick', 4, '', 8, '']];
    const found = planOf(season({ plan, moves, lots: [lot('L1', 'Base', 800)] }));
    // 6 bars are left to make for the 5th: 600 of 800 g; of 3000 g for the 15th 2800 are missing.
    expect(row(found, 'Base')).toMatchObject({
      gross: 3600,
      net: 2800,
      packs: 3,
      orderBy: '2026-12-07',
    });
    const base = found.lines.find(({ material }) => material.name === 'Base');
    expect(
      base?.days.map(({ day, net, projected }) => [isoDate(day), toCell(net), toCell(projected)]),
    ).toEqual([
      ['2026-12-05', 0, 200],
      ['2026-12-15', 2800, 0],
    ]);
  });

  it('a lot good for the first line and not for the second counts for the first', () => {
    const lots = [lot('L1', 'Base', 2500, '2026-12-10')];
    const found = planOf(season({ plan, lots }));
    expect(row(found, 'Base')).toMatchObject({ gross: 4000, onHand: 2500, net: 3000 });
  });

  it('cash falls in the week of each order', () => {
    const found = planOf(season({ plan }));
    const weeks = cashByWeek(found, on('2026-11-12')).map(({ monday, cost, inAll }) => [
      isoDate(monday),
      toCell(cost),
      toCell(inAll),
    ]);
    // Base: 1 pack by 27 November, 3 by 7 December; boxes: 4 packs in all, so that a second order of
    // one would be under the least of three and joins the first, by 30 November.
    expect(weeks).toEqual([
      ['2026-11-09', 0, 0],
      ['2026-11-16', 0, 0],
      ['2026-11-23', 8, 8],
      ['2026-11-30', 16, 24],
      ['2026-12-07', 24, 48],
    ]);
  });

  it('overdue orders are cash of this week, and late', () => {
    const soon = [['P1', 'Brick', 20, '2026-11-05']];
    // To be ordered by 28 and 31 October; 4 November is in the week of the 2nd.
    const wednesday = on('2026-11-04');
    const found = sound(supplies(bookOf(season({ plan: soon })), wednesday));
    expect(
      cashByWeek(found, wednesday).map(({ monday, cost, late }) => [
        isoDate(monday),
        toCell(cost),
        toCell(late),
      ]),
    ).toEqual([['2026-11-02', 28, 28]]);
  });

  it('no order or no price is this week without money', () => {
    const nothing = (plan: SupplyPlan) =>
      cashByWeek(plan, from).map(({ monday, inAll }) => [isoDate(monday), toCell(inAll)]);
    const thisWeek = [['2026-10-26', 0]];
    const lots = [lot('L1', 'Base', 9000), lot('L2', 'Box', 90)];
    expect(nothing(planOf(season({ plan, lots })))).toEqual(thisWeek);
    const materials = [['Base', 'base', 'g', 1000, '', 5, '']];
    const unpriced = season({ plan: [['P1', 'Slab', 10, '2026-12-05']], materials });
    const slabs = {
      ...unpriced,
      Layers: (unpriced['Layers'] ?? []).filter(([name]) => name !== 'Brick'),
    };
    expect(nothing(planOf(slabs))).toEqual(thisWeek);
  });

  it('spares and leftovers go on to later lines only when asked', () => {
    const mosaics = [
      ['P1', 'Mosaic', 2, '2026-12-05'],
      ['P2', 'Mosaic', 4, '2026-12-15'],
    ];
    // 48 tiles are 2 fills with 24 spare; 96 are 3 fills, or 2 with the spares: 72 of 96.
    expect(row(planOf(season({ plan: mosaics })), 'Base').gross).toBe(2 * 25 + 3 * 25 + 6 * 50);
    expect(row(planOf(season({ plan: mosaics }), true), 'Base').gross).toBe(4 * 25 + 6 * 50);
    const moves = [['E1', '2026-10-02', 'spare', 'Base × Tiles', 36, '', 1, '']];
    expect(row(planOf(season({ plan: mosaics, moves }), true), 'Base').gross).toBe(3 * 25 + 6 * 50);
    const soap = [['E1', '2026-10-02', 'left over', 'Base leftover', 80, '', 1, '']];
    expect(row(planOf(season({ plan: mosaics, moves: soap }), true), 'Base').gross).toBe(320);
  });
});

describe('what can’t be planned', () => {
  it.each([
    [
      'no plan',
      [],
      'not yet',
      'Plan has no lines. Add the bars you mean to make and the day they must be ready.',
    ],
    [
      'only lines of the past',
      [['P1', 'Brick', 2, '2026-10-31']],
      'not yet',
      'No line of Plan is to be ready on 2026-11-01 or later. Add one.',
    ],
    [
      'a design without layers',
      [['P7', 'Idea', 2, '2026-12-01']],
      'wrong',
      'Plan line P7: Idea has no lines in Layers. Add what one bar is made of.',
    ],
  ])('%s: a sentence', (_, plan, kind, sentence) => {
    expect(refusal(supplies(bookOf(season({ plan })), from))).toEqual({ kind, sentence });
  });

  it('lines of the past need nothing', () => {
    const plan = [
      ['P1', 'Brick', 2, '2026-10-31'],
      ['P2', 'Brick', 2, '2026-11-01'],
    ];
    expect(row(planOf(season({ plan })), 'Base').gross).toBe(200);
  });
});

describe('two lines of one design for one day', () => {
  it.each(['as they are', 'turned round'])('share the bars on hand by name, %s', (order) => {
    const lines = [
      ['P2', 'Brick', 10, '2026-12-05'],
      ['P10', 'Brick', 20, '2026-12-05'],
    ];
    const made = ['M1', '2026-10-20', 'made', 'Brick', 10, '', 8, ''];
    const book = bookOf(
      season({ plan: order === 'turned round' ? [...lines].reverse() : lines, moves: [made] }),
    );
    expect(
      sound(openPlan(book, from)).open.map(({ line, barsToMake }) => [line.planLine, barsToMake]),
    ).toEqual([
      ['P2', 0],
      ['P10', 20],
    ]);
  });
});

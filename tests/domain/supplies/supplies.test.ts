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

  it('takes nothing for what finds no day in the calendar', () => {
    // To be poured on 31 October, and today is 1 November.
    const late = ['P1', 'Mosaic', 3, '2026-11-02'];
    expect(planOf(season({ plan: [late] })).lines).toEqual([]);
    const found = planOf(season({ plan: [late, ['P2', 'Brick', 20, '2026-12-05']] }));
    expect(row(found, 'Base').gross).toBe(2000);
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
  /** 30 bricks a day at most (20 minutes of setup and 5 a bar): two batches, as even as can be. */
  const settings = [['Minutes per day', 170, '']];

  it('stock and bars go to the earliest batch; the first shortage sets the day to order', () => {
    const moves = [['E1', '2026-10-02', 'made', 'Brick', 4, '', 8, '']];
    const found = planOf(season({ plan, settings, moves, lots: [lot('L1', 'Base', 2000)] }));
    // 36 bars are left to make, 18 a batch: 1800 of 2000 g for the 5th, and 1600 short for the 15th.
    expect(row(found, 'Base')).toMatchObject({
      gross: 3600,
      net: 1600,
      packs: 2,
      orderBy: '2026-12-07',
    });
    const base = found.lines.find(({ material }) => material.name === 'Base');
    expect(
      base?.days.map(({ day, net, projected }) => [isoDate(day), toCell(net), toCell(projected)]),
    ).toEqual([
      ['2026-12-05', 0, 200],
      ['2026-12-15', 1600, 0],
    ]);
  });

  it('a lot good for the first batch and not for the second counts for the first', () => {
    const lots = [lot('L1', 'Base', 2500, '2026-12-10')];
    const found = planOf(season({ plan, settings, lots }));
    expect(row(found, 'Base')).toMatchObject({ gross: 4000, onHand: 2500, net: 2000 });
  });

  it('cash falls in the week of each order', () => {
    const found = planOf(season({ plan, settings }));
    const weeks = cashByWeek(found, on('2026-11-12')).map(({ monday, cost, inAll }) => [
      isoDate(monday),
      toCell(cost),
      toCell(inAll),
    ]);
    // Base: 2 packs by 27 November, 2 by 7 December; boxes: 4 packs in all, so that a second order of
    // one would be under the least of three and joins the first, by 30 November.
    expect(weeks).toEqual([
      ['2026-11-09', 0, 0],
      ['2026-11-16', 0, 0],
      ['2026-11-23', 16, 16],
      ['2026-11-30', 16, 32],
      ['2026-12-07', 16, 48],
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

  it('spares and leftovers go on to later batches only when asked', () => {
    const mosaics = [
      ['P1', 'Mosaic', 1, '2026-12-05'],
      ['P2', 'Mosaic', 2, '2026-12-15'],
    ];
    // 50 minutes are two mosaics, so that they are two batches.
    const two = { plan: mosaics, settings: [['Minutes per day', 50, '']] };
    // 24 tiles are 1 fill with 12 spare; 48 are 2 fills, or 1 with the spares: 36 of 48.
    expect(row(planOf(season(two)), 'Base').gross).toBe(25 + 2 * 25 + 3 * 50);
    expect(row(planOf(season(two), true), 'Base').gross).toBe(2 * 25 + 3 * 50);
    const moves = [['E1', '2026-10-02', 'spare', 'Base × Tiles', 36, '', 1, '']];
    expect(row(planOf(season({ ...two, moves }), true), 'Base').gross).toBe(25 + 3 * 50);
    const soap = [['E1', '2026-10-02', 'left over', 'Base leftover', 80, '', 1, '']];
    expect(row(planOf(season({ ...two, moves: soap }), true), 'Base').gross).toBe(120);
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

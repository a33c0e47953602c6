import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../../src/domain/book/book.ts';
import { findDesign } from '../../../src/domain/book/find.ts';
import { isoDate, readDay } from '../../../src/domain/kernel/day.ts';
import { toCell } from '../../../src/domain/kernel/exact.ts';
import type { HealthFinding, Repair } from '../../../src/domain/health/finding.ts';
import { healthCheck } from '../../../src/domain/health/health-check.ts';
import { postBatch } from '../../../src/domain/ledger/post-batch.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { findItem } from '../../../src/domain/book/find.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { table, type Tables, withCell, withRows } from '../../support/small-book.ts';
import { bookOf, sound } from '../label/label-book.ts';
import { randomLedger } from '../trace/random-ledger.ts';

const TODAY = readDay('2024-06-01') ?? 0;
const check = (tables: Tables): HealthFinding[] => healthCheck(bookOf(tables), TODAY, 'Ann');
const kinds = (tables: Tables) => check(tables).map(({ kind, about }) => [kind, about]);

/** A repair as rows appended to the tables, and nothing else. */
function repaired(tables: Tables, repair: Repair | undefined): Tables {
  if (repair === undefined) throw new Error('There is no repair.');
  const moves = repair.moves.map((move): Cell[] => [
    move.entry,
    isoDate(move.when),
    move.reason,
    move.item.name,
    toCell(move.quantity),
    move.lot,
    toCell(move.value),
    move.batch,
    move.by,
    move.note,
  ]);
  const batches = repair.batches.map((batch): Cell[] => [
    batch.batch,
    isoDate(batch.poured),
    batch.design,
    toCell(batch.bars),
    batch.good,
    batch.state,
  ]);
  return withRows(withRows(tables, 'Moves', ...moves), 'Batches', ...batches);
}

/** One whole batch B1 of 4 bars, a leftover with it, and two bars sold. */
const sound1: Tables = {
  Materials: table('Material | Kind | Unit', ['Clear base', 'base', 'g']),
  Lots: table('Lot | Material | Received | Quantity | Paid', [
    'L1',
    'Clear base',
    '2024-01-01',
    500,
    50,
  ]),
  Molds: table('Mold | Makes | Cavities | Fill g', ['Tiles', 'tiles', 36, 25]),
  Colours: table('Colour | Ingredient | Amount | Measure', ['Tint', 'Clear base', 1, 'g']),
  Designs: table('Design | Labour minutes', ['Plain', 5]),
  Layers: table('Design | Layer | Part | Item | Per bar | Per', [
    'Plain',
    '1',
    'pour',
    'Tint',
    90,
    'g',
  ]),
  Batches: table('Batch | Poured | Design | Bars | Good | State', [
    'B1',
    '2024-02-01',
    'Plain',
    4,
    4,
    'posted',
  ]),
  Moves: table(
    'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
    ['B1.01', '2024-02-01', 'used', 'Clear base', -400, 'L1', -40, 'B1', '', ''],
    ['B1.02', '2024-02-01', 'left over', 'Tint leftover', 40, 'B1', 4, 'B1', '', ''],
    ['B1.03', '2024-02-01', 'made', 'Plain', 4, 'B1', 36, 'B1', '', ''],
    ['S1', '2024-02-02', 'sold', 'Plain', -2, 'B1', -18, '', '', ''],
  ),
};

const onHandOf = (book: Book, name: string) =>
  onHand(book, sound(findItem(book, name)), TODAY).toNumber();

/** All rows but one of Moves; 1 is the first. */
function withoutMove(tables: Tables, row: number): Tables {
  return { ...tables, Moves: (tables['Moves'] ?? []).filter((_, at) => at !== row) };
}

/** Without one row, where there are so many. */
function withoutRow(tables: Tables, [name, at]: readonly [string, number]): Tables {
  const [headers = [], ...rows] = tables[name] ?? [];
  const row = at % Math.max(1, rows.length);
  return { ...tables, [name]: [headers, ...rows.filter((_, index) => index !== row)] };
}

/** With no Lot in any move of a material, so that a lost lot leaves a book that still reads. */
function withoutLots(tables: Tables): Tables {
  const [headers = [], ...rows] = tables['Moves'] ?? [];
  return {
    ...tables,
    Moves: [headers, ...rows.map((row) => row.map((cell, at) => (at === 5 ? '' : cell)))],
  };
}

describe('healthCheck', () => {
  it('finds nothing in a whole ledger, nor in what our own posting writes', () => {
    expect(kinds(sound1)).toEqual([]);
    const book = bookOf(sound1);
    const answer = sound(
      postBatch(
        book,
        {
          batch: 'B2',
          poured: TODAY,
          design: sound(findDesign(book, 'Plain')),
          bars: 1,
          useLeftovers: true,
          good: 1,
          seconds: 0,
          minutes: undefined,
          weighed: new Map(),
          sparePieces: new Map(),
          leftoverG: new Map(),
          countIsOff: new Set(),
          by: '',
          note: '',
        },
        TODAY,
      ),
    );
    if (answer.kind === 'short') throw new Error('short');
    const { moves, batch } = answer.posting;
    expect(kinds(repaired(sound1, { says: '', moves, batches: [batch] }))).toEqual([]);
  });

  it('adds the line of a batch that is whole but for it', () => {
    const tables = { ...sound1, Batches: (sound1['Batches'] ?? []).slice(0, 1) };
    const [finding] = check(tables);
    expect(finding).toMatchObject({ kind: 'moves without a batch line', about: 'B1' });
    expect(finding?.says).toMatch(/3 moves name batch B1, which is not in Batches/);
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(bookOf(after).batches.get('b1')).toMatchObject({ bars: 4, good: 4, state: 'posted' });
  });

  it('takes back a batch that was written by halves and has no line', () => {
    const half = withoutMove(sound1, 4);
    const tables = { ...withoutMove(half, 3), Batches: (half['Batches'] ?? []).slice(0, 1) };
    const [finding] = check(tables);
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(onHandOf(bookOf(after), 'Clear base')).toBe(500);
    expect(onHandOf(bookOf(after), 'Tint leftover')).toBe(0);
  });

  it('asks whether a mistyped batch is meant', () => {
    const tables = withRows(sound1, 'Moves', [
      'E9',
      '2024-03-01',
      'used',
      'Clear base',
      -1,
      'L1',
      -0.1,
      'B11',
    ]);
    expect(check(tables)[0]?.says).toMatch(/Is B1 meant\?/);
  });

  it('puts missing bars in stock at the value that no other move holds', () => {
    const tables = withoutMove(withoutMove(sound1, 4), 3);
    const [finding, ...others] = check(tables);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ kind: 'bars not as the batch says', about: 'B1' });
    const move = finding?.repair?.moves[0];
    expect([move?.quantity.toNumber(), move?.value.toNumber(), move?.lot]).toEqual([4, 36, 'B1']);
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(onHandOf(bookOf(after), 'Plain')).toBe(4);
  });

  it('finds surplus bars, and leaves them to the maker', () => {
    const [finding] = check(withCell(sound1, 'Batches', 1, 'Good', 3));
    expect(finding).toMatchObject({ kind: 'bars not as the batch says', repair: undefined });
  });

  it('finds value out that is not value in, to the cent', () => {
    expect(kinds(withCell(sound1, 'Moves', 2, 'Value', 4.01))).toEqual([
      ['value out is not value in', 'B1'],
    ]);
    const [finding] = check(withoutMove(sound1, 2));
    expect(finding?.says).toMatch(/B1 used 4 USD more than its bars, spares and leftovers hold/);
    const [blank] = check(withCell(sound1, 'Moves', 2, 'Value', ''));
    expect(blank?.says).toMatch(/no Value in B1\.02/);
  });

  it('lets a batch without a good bar write its value off', () => {
    let tables = withoutMove(withoutMove(sound1, 4), 3);
    tables = withCell(tables, 'Batches', 1, 'Good', 0);
    expect(kinds(tables)).toEqual([]);
  });

  it('finds a batch without moves', () => {
    const tables = withRows(sound1, 'Batches', ['B2', '2024-03-01', 'Plain', 4, 4, 'posted']);
    expect(kinds(tables)).toEqual([['batch without moves', 'B2']]);
    const undone = withRows(sound1, 'Batches', ['B2', '2024-03-01', 'Plain', 4, 4, 'Undone']);
    expect(kinds(undone)).toEqual([]);
  });

  it('finishes an undo that stopped half-way', () => {
    let tables = withCell(withoutMove(sound1, 4), 'Batches', 1, 'State', 'undone');
    tables = withRows(tables, 'Moves', [
      'B1.03.R',
      '2024-02-03',
      'reversed',
      'Plain',
      -4,
      'B1',
      -36,
      'B1',
      '',
      'B1.03',
    ]);
    const [finding] = check(tables);
    expect(finding).toMatchObject({ kind: 'batch half undone', about: 'B1' });
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(onHandOf(bookOf(after), 'Clear base')).toBe(500);
  });

  it('finds a State that its moves deny', () => {
    const whole = repaired(
      withCell(withoutMove(sound1, 4), 'Batches', 1, 'State', 'undone'),
      check(withCell(withoutMove(sound1, 4), 'Batches', 1, 'State', 'undone'))[0]?.repair,
    );
    expect(kinds(withCell(whole, 'Batches', 1, 'State', 'posted'))).toEqual([
      ['state not as the moves say', 'B1'],
    ]);
  });

  it('finds the first day below zero and how deep it went, though it is above today', () => {
    let tables = withRows(
      sound1,
      'Moves',
      ['S2', '2024-02-03', 'sold', 'Plain', -3, '', -27, '', '', ''],
      ['S3', '2024-02-05', 'sold', 'Plain', -2, '', -18, '', '', ''],
      ['C1', '2024-02-06', 'counted', 'Plain', 9, '', 81, '', '', ''],
    );
    const [finding] = check(tables);
    expect(finding).toMatchObject({ kind: 'stock below zero', about: 'Plain' });
    expect(finding?.says).toMatch(/On 2024-02-03 the ledger had -1 each of Plain, and at worst -3/);
    tables = repaired(tables, finding?.repair);
    expect(kinds(tables)).toEqual([]);
  });

  it('does not mind what was taken back, nor the order within a day', () => {
    const tables = withRows(
      sound1,
      'Moves',
      ['S2', '2024-02-03', 'sold', 'Plain', -30, '', -27, '', '', ''],
      ['S2.R', '2024-03-03', 'reversed', 'Plain', 30, '', 27, '', '', 'S2'],
      ['A1', '2024-01-01', 'wasted', 'Clear base', -50, '', -5, '', '', ''],
    );
    expect(kinds(tables)).toEqual([]);
  });

  it('finds a lot used before it came', () => {
    const tables = withCell(sound1, 'Lots', 1, 'Received', '2024-02-02');
    expect(kinds(tables)).toEqual([
      ['lot used before it came', 'L1'],
      ['stock below zero', 'Clear base'],
    ]);
    expect(check(tables)[0]?.says).toMatch(
      /B1\.01 took Clear base from lot L1 on 2024-02-01, before it came on 2024-02-02/,
    );
  });

  it('finds a lot used beyond its quantity, though another lot has enough', () => {
    let tables = withRows(sound1, 'Lots', ['L2', 'Clear base', '2024-01-02', 500, 50]);
    tables = withRows(tables, 'Moves', [
      'W1',
      '2024-03-01',
      'wasted',
      'Clear base',
      -130,
      'L1',
      -13,
    ]);
    const [finding, ...others] = check(tables);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ kind: 'lot used beyond its quantity', about: 'L1' });
    expect(finding?.says).toMatch(/took 30 g more of lot L1 .* from 2024-03-01 on/);
    expect(kinds(repaired(tables, finding?.repair))).toEqual([]);
  });

  it.each([
    ['names nothing', 2, '', /names no entry in its Note/, false],
    ['names no entry', 2, 'S11', /no entry. Did you mean "S1"\?/, false],
    [
      'is not the opposite',
      1,
      'S1',
      /not by the same item and quantity.*Mend it to 2 of Plain/,
      false,
    ],
  ])('finds a reversal that %s', (_, quantity, note, sentence, hasRepair) => {
    const tables = withRows(sound1, 'Moves', [
      'R1',
      '2024-03-01',
      'reversed',
      'Plain',
      quantity,
      '',
      18,
      '',
      '',
      note,
    ]);
    const [finding] = check(tables);
    expect(finding).toMatchObject({ kind: 'reversal of nothing', about: 'R1' });
    expect(finding?.says).toMatch(sentence);
    expect(finding?.repair !== undefined).toBe(hasRepair);
  });

  it('takes back the second of two reversals of one entry', () => {
    const reversal = (entry: string, day: string): Cell[] => [
      entry,
      day,
      'reversed',
      'Plain',
      2,
      'B1',
      18,
      '',
      '',
      'S1',
    ];
    const tables = withRows(
      sound1,
      'Moves',
      reversal('R1', '2024-03-01'),
      reversal('R2', '2024-03-02'),
    );
    const findings = check(tables);
    expect(findings.map(({ kind }) => kind)).toEqual(['reversed twice']);
    const after = repaired(tables, findings[0]?.repair);
    expect(kinds(after)).toEqual([]);
    expect(onHandOf(bookOf(after), 'Plain')).toBe(4);
  });

  it('makes ids that the ledger does not have', () => {
    const tables = withRows(
      withCell(withoutMove(sound1, 4), 'Batches', 1, 'State', 'undone'),
      'Moves',
      ['b1.01.r', '2024-02-01', 'counted', 'Clear base', 1, 'L1', 0.1, '', '', ''],
    );
    const entries = check(tables)[0]?.repair?.moves.map(({ entry }) => entry);
    expect(entries?.[0]).toBe('B1.01.R.2');
  });

  it('answers on ledgers with lines lost at random; each repair reads as a book, its finding gone', () => {
    let repairs = 0;
    const lost = fc.array(fc.tuple(fc.constantFrom('Moves', 'Batches', 'Lots'), fc.nat(40)), {
      minLength: 1,
      maxLength: 4,
    });
    fc.assert(
      fc.property(randomLedger, lost, (ledger, drops) => {
        const tables = drops.reduce<Tables>(withoutRow, withoutLots(ledger.tables));
        for (const finding of check(tables)) {
          expect(finding.says).toMatch(/\.$/);
          if (finding.repair === undefined) continue;
          repairs += 1;
          const same = check(repaired(tables, finding.repair)).filter(
            ({ kind, about }) => kind === finding.kind && about === finding.about,
          );
          expect(same, finding.says).toEqual([]);
        }
      }),
      { numRuns: 150 },
    );
    expect(repairs).toBeGreaterThan(100);
  });

  it('finds any one move that is lost from a whole batch', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3 }), (row) => {
        expect(check(withoutMove(withoutMove(sound1, 4), row)).length).toBeGreaterThan(0);
      }),
    );
  });
});

import { describe, expect, it } from 'vitest';
import { findItem } from '../../../src/domain/book/find.ts';
import { healthCheck } from '../../../src/domain/health/health-check.ts';
import { exact, toCell } from '../../../src/domain/kernel/exact.ts';
import { postShaping } from '../../../src/domain/ledger/post-shaping.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { stockValue } from '../../../src/domain/stock/valuation.ts';
import { trace } from '../../../src/domain/trace/trace.ts';
import { post, readTables, sure, undo } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { shape as shapeOn, shapedOf } from '../../support/shaped-of.ts';
import { table, type Tables, withRows, workshop } from '../../support/small-book.ts';

const TODAY = day('2024-03-01');

const shape = (tables: Tables, shaped: ReturnType<typeof shapedOf>) =>
  shapeOn(tables, shaped, TODAY);

const stockOf = (tables: Tables, name: string): string => {
  const book = readTables(tables);
  const item = sure(findItem(book, name));
  return `${onHand(book, item, TODAY).toString()} worth ${toCell(sure(stockValue(book, item, TODAY)))}`;
};

describe('pieces shaped ahead', () => {
  const done = shape(
    workshop,
    shapedOf([
      ['Slate', 'Tiles', 40],
      ['White base', 'Lighthouse', 6],
    ]),
  );
  const after = done?.after ?? {};

  it('take materials, and stand in stock as spare pieces at what they cost', () => {
    // 40 tiles are 2 fills of 25 g: 48.5 g of clear base at 27 ÷ 3000 a gram (its best before is first), 1.5 g of
    // mica at 0.20. 6 lighthouses are 1 fill of 30 g of white base at 0.009.
    expect(
      done?.posting.moves.map(({ reason, item, quantity, lot, value }) =>
        [reason, item.name, quantity, lot, value].map(String),
      ),
    ).toEqual([
      ['used', 'Clear base', '-49', 'C2', '-0.44'],
      ['used', 'Blue mica', '-1.5', 'M1', '-0.3'],
      ['used', 'White base', '-30', 'W1', '-0.27'],
      ['spare', 'Slate × Tiles', '72', 'S1', '0.74'],
      ['spare', 'White base × Lighthouse', '6', 'S1', '0.27'],
    ]);
  });

  it('are a batch of 0 bars without a design, which BOOK reads again', () => {
    const batch = readTables(after).batches.get('s1');
    expect(batch).toMatchObject({ design: undefined, bars: 0, good: 0, state: 'recorded' });
    expect(healthCheck(readTables(after), TODAY, 'me')).toEqual([]);
  });

  it('are laid by a later pour at their cost', () => {
    const poured = post(after, pourOf('Tide Pool', 2, { useLeftovers: true }), TODAY);
    const used = poured?.posting.moves.find(({ item }) => item.name === 'Slate × Tiles');
    // 36 of the 72 pieces worth 0.74.
    expect([used?.quantity, used?.lot, used?.value].map(String)).toEqual(['-36', 'S1', '-0.37']);
    expect(stockOf(poured?.after ?? {}, 'Slate × Tiles')).toBe('36 worth 0.37');
    const lines = sure(trace(readTables(poured?.after ?? {}), 'B1'));
    expect(lines.map(({ batch, design, item, lot }) => [batch, design, item, lot])).toContainEqual([
      ...['S1', '', 'Clear base', 'C2'],
    ]);
  });

  it('are taken back as any batch, unless a pour has laid them', () => {
    const undone = undo(after, 'S1', TODAY) ?? {};
    for (const item of ['Clear base', 'Blue mica', 'White base'])
      expect(stockOf(undone, item)).toBe(stockOf(workshop, item));
    expect(readTables(undone).batches.get('s1')?.state).toBe('undone');
    const poured = post(after, pourOf('Tide Pool', 4, { useLeftovers: true }), TODAY);
    expect(undo(poured?.after ?? {}, 'S1', TODAY)).toBeUndefined();
  });

  it('carry what broke: 71 whole tiles cost what 72 did; none at all is written off', () => {
    const broken = (pieces: number) =>
      shape(
        workshop,
        shapedOf([['Slate', 'Tiles', 40]], {
          sparePieces: new Map([['Slate × Tiles', exact(pieces)]]),
        }),
      );
    expect(stockOf(broken(71)?.after ?? {}, 'Slate × Tiles')).toBe('71 worth 0.74');
    expect(broken(0)?.posting.writtenOff.toString()).toBe('0.74');
    expect(healthCheck(readTables(broken(0)?.after ?? {}), TODAY, 'me')).toEqual([]);
  });

  it('are not written twice, and not without stock', () => {
    const again = postShaping(
      readTables(after),
      shapedOf([['Slate', 'Tiles', 1]])(readTables(after), TODAY),
      TODAY,
    );
    expect(again.ok ? '' : again.failure.sentence).toBe(
      'Batch S1 is in Batches already, so it is not recorded again.',
    );
    const book = readTables(workshop);
    const many = sure(
      postShaping(book, shapedOf([['Slate', 'Tiles', 100 * 72]])(book, TODAY), TODAY),
    );
    expect(many.lacking.map(({ item }) => item.name)).toEqual(['Blue mica']);
    expect(many.kind).toBe('short');
  });

  it.each([
    [[], 'Nothing is to be shaped. Name a colour and a mold.'],
    [[['Slate', 'Six bars', 6]], 'Six bars makes bars. Name a mold that makes tiles or embeds.'],
    [[['Slate', 'Tiles', 0]], 'Slate × Tiles is 0. Give a whole number, 1 or more.'],
    [[['Slate', 'Tiles', 1.5]], 'Slate × Tiles is 1.5. Give a whole number, 1 or more.'],
  ] as const)('of %j: %s', (wanted, sentence) => {
    expect(() => shapedOf(wanted)(readTables(workshop), TODAY)).toThrow(sentence);
  });

  it('use leftover soap first, and leave spare pieces where they are', () => {
    const stocked = withRows(
      workshop,
      'LedgerLines',
      ['E1', '2024-02-01', 'left over', 'Slate leftover', 20, 'X', 0.5, '', '', ''],
      ['E2', '2024-02-01', 'spare', 'Slate × Tiles', 36, 'X', 0.5, '', '', ''],
    );
    const moves = shape(stocked, shapedOf([['Slate', 'Tiles', 36]], { useLeftovers: true }))
      ?.posting.moves;
    expect(
      moves?.map(({ reason, item, quantity }) => [reason, item.name, quantity.toString()]),
    ).toContainEqual(['used', 'Slate leftover', '-20']);
    expect(
      moves?.map(({ reason, item, quantity }) => [reason, item.name, quantity.toString()]),
    ).toContainEqual(['spare', 'Slate × Tiles', '36']);
  });
});

/** Costs of a process with work left in it, materials: REFERENCES B4 (OpenStax, Principles of Accounting 2). */
it('pieces of one stage go on at their cost, as a textbook’s units do: 7,500 of 8,700 begun', () => {
  const plant: Tables = {
    Settings: table('Setting | Value', ['Scale step g', 1]),
    Materials: table('Material | Kind | Unit', ['Base', 'base', 'g']),
    Lots: table('Lot | Material | Received | Quantity | Paid', [
      'L1',
      'Base',
      '2024-01-05',
      8700,
      10_179,
    ]),
    LedgerLines: workshop['LedgerLines'] ?? [],
    Molds: table('Mold | Makes | Cavities | Fill g', ['Unit', 'embeds', 1, 1]),
    Designs: table('Design', ['Done']),
    Layers: table('Design | Layer | Part | Item | Mold | Per bar | Per', [
      'Done',
      '1',
      'embed',
      'Base',
      'Unit',
      1,
      'each',
    ]),
    Batches: workshop['Batches'] ?? [],
  };
  const begun = shape(plant, shapedOf([['Base', 'Unit', 8700]]))?.after ?? {};
  const finished = post(begun, pourOf('Done', 7500, { useLeftovers: true }), TODAY)?.after ?? {};
  expect(stockOf(begun, 'Base × Unit')).toBe('8700 worth 10179');
  expect(stockOf(finished, 'Done')).toBe('7500 worth 8775');
  expect(stockOf(finished, 'Base × Unit')).toBe('1200 worth 1404');
});

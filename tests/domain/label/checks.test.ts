import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import type { CheckLine } from '../../../src/domain/label/check-line.ts';
import { checksOf } from '../../../src/domain/label/checks.ts';
import { type Tables, withCell, withRows, withSetting } from '../../support/small-book.ts';
import { barTables, bookOf, designOf, type Ingredient, refusal, sound } from './label-book.ts';

const TODAY = readDay('2024-06-01') ?? 0;

function linesOf(tables: Tables): readonly CheckLine[] {
  const book = bookOf(tables);
  return sound(checksOf(book, designOf(book), TODAY));
}

/** The one line whose Check begins so, its figures as numbers. */
function line(tables: Tables, beginning: string) {
  const lines = linesOf(tables).filter(({ check }) => check.startsWith(beginning));
  expect(lines.map(({ check }) => check)).toHaveLength(1);
  const [{ check = '', value = '', limit = '', result = '', source = '' } = {}] = lines;
  const plain = (cell: unknown) => (typeof cell === 'string' ? cell : Number(cell));
  return { check, value: plain(value), limit: plain(limit), result, source };
}

const base: Ingredient & { g: number } = { name: 'Base', kind: 'base', g: 97, inci: 'Aqua' };
const scent = (more: Partial<Ingredient> = {}): Ingredient & { g: number } => ({
  name: 'Scent',
  kind: 'fragrance',
  g: 3,
  inci: 'Parfum',
  allergens: 'none',
  ...more,
});

describe('limits by Max %', () => {
  it.each([
    ['under', 3.1, 'ok'],
    ['exactly at', 3, 'ok'],
    ['over', 2.99, 'over'],
    ['0 allowed', 0, 'over'],
  ])('fragrance %s its limit', (_, maxPercent, result) => {
    const found = line(barTables([base, scent({ maxPercent })]), 'Fragrance load');
    expect(found).toMatchObject({ value: 3, limit: maxPercent, result });
    expect(found.source).toMatch(/supplier's document/);
  });

  it.each(['fragrance', 'colourant'])('a %s without Max %% is unknown', (kind) => {
    const found = linesOf(barTables([base, scent({ kind })])).find(({ check }) =>
      check.endsWith(': Scent'),
    );
    expect(found).toMatchObject({ result: 'unknown', limit: '' });
  });

  it('holds any other material against a limit where one was entered', () => {
    expect(line(barTables([base, scent({ kind: 'extra', maxPercent: 1 })]), 'Share')).toMatchObject(
      {
        value: 3,
        limit: 1,
        result: 'over',
      },
    );
  });

  it('adds up a material over layers, and does not count its packaging', () => {
    const tables = barTables([base, scent({ maxPercent: 5, g: 0 } as object)], {
      layers: [
        ['Bar', '1', 'scent', 'Scent', '', 2, 'g'],
        ['Bar', '2', 'scent', 'Scent', '', 1, 'g'],
      ],
    });
    expect(line(tablesWithout(tables, 0), 'Fragrance load')).toMatchObject({ value: 3 });
  });
});

/** The same without layers of nothing. */
function tablesWithout(tables: Tables, perBar: number): Tables {
  const [headers = [], ...rows] = tables['Layers'] ?? [];
  return { ...tables, Layers: [headers, ...rows.filter((row) => row[5] !== perBar)] };
}

describe('names and weights', () => {
  it('is ok where all are named in full', () => {
    expect(line(barTables([base, scent()]), 'INCI names')).toMatchObject({ result: 'ok' });
  });

  it.each([
    ['missing', '', /Fill in INCI/],
    ['short of 100 %', 'Parfum 95', /ask the supplier/],
    ['without percents', 'Parfum; Limonene', /no percent/],
    ['over the whole', 'Parfum 80; Limonene 30', /adds up to 110/],
  ])('INCI %s is unknown', (_, inci, source) => {
    const found = line(barTables([base, scent({ inci })]), 'INCI');
    expect(found.check).toMatch(/Scent/);
    expect(found.result).toBe('unknown');
    expect(found.source).toMatch(source);
  });

  it('says where a density was assumed', () => {
    const drops = { ...scent(), unit: 'ml' };
    expect(line(barTables([base, drops]), 'Density: Scent')).toMatchObject({
      value: '1 g/ml assumed',
      result: 'unknown',
    });
    expect(
      linesOf(barTables([base, { ...drops, density: 0.9 }])).some(({ check }) =>
        check.startsWith('Density'),
      ),
    ).toBe(false);
  });
});

describe('skin stay and allergens', () => {
  it('tells a default from what was set', () => {
    const tables = barTables([base, scent()]);
    expect(line(tables, 'Skin stay')).toMatchObject({ value: 'rinse-off', result: 'unknown' });
    expect(line(tables, 'Skin stay').source).toMatch(/default/);
    const set = withSetting(tables, 'Skin stay', 'leave-on');
    expect(line(set, 'Skin stay')).toMatchObject({
      value: 'leave-on',
      limit: 'allergens named above 0.001 %',
      result: 'ok',
    });
  });

  it('counts and names those above the threshold', () => {
    const found = line(
      barTables([base, scent({ allergens: 'Linalool 5; Citral 0.1; Eugenol 2' })]),
      'Allergens named',
    );
    expect(found.check).toBe('Allergens named on the label: Linalool, Eugenol');
    expect(found).toMatchObject({ value: 2, result: 'ok' });
    expect(found.source).toMatch(/1223\/2009.*2023\/1545.*2023-07-27/);
  });

  it.each([
    ['a blank of a fragrance', { allergens: '' }, 'Allergens: Scent', 'unknown'],
    ['no percent', { allergens: 'Linalool' }, 'Allergens: Scent, Linalool', 'unknown'],
    ['not on the list', { allergens: 'Linaloll 2' }, 'Allergens: Scent, Linaloll', 'unknown'],
    [
      'prohibited',
      { allergens: 'Butylphenyl Methylpropional 1' },
      'Allergens: Scent, Butylphenyl Methylpropional',
      'over',
    ],
    [
      'an oil that the list calls otherwise',
      { inci: 'Lavandula Angustifolia Oil' },
      'Allergens: Scent, Lavandula',
      'unknown',
    ],
  ])('%s is not passed over', (_, more, check, result) => {
    const tables = barTables([base, scent(more)]);
    expect(line(tables, check).result).toBe(result);
    expect(line(tables, 'Allergens named').result).toBe('unknown');
  });
});

describe('net weight', () => {
  const bar = (netG: number | '') => barTables([base, scent()], { netG });

  it('is unknown where Net g is blank', () => {
    expect(line(bar(''), 'Net weight')).toMatchObject({
      result: 'unknown',
      value: 'Net g is blank',
    });
  });

  // The bar weighs 100 g by its recipe. 76/211/EEC, Annex I: the mean not below nominal; at 104 g one
  // bar may be short by 4.5 % = 4.68, up to 4.7 g; at 106 g by 4.8 g.
  it.each([
    [90, 'ok', 'ok', 0, 4.5],
    [100, 'ok', 'ok', 0, 4.5],
    [104, 'over', 'ok', 4, 4.7],
    [106, 'over', 'over', 6, 4.8],
  ])('of %s g: average %s, one bar %s', (netG, average, single, value, limit) => {
    expect(line(bar(netG), 'Bar weight')).toMatchObject({
      value: 100,
      limit: netG,
      result: average,
    });
    expect(line(bar(netG), 'One bar short of Net g by, g (EU)')).toMatchObject({
      value,
      limit,
      result: single,
    });
  });

  it('never clears a short bar by a table from memory', () => {
    expect(line(bar(104), 'One bar short of Net g by, g (US)')).toMatchObject({
      result: 'unknown',
    });
    expect(line(bar(104), 'One bar short of Net g by, g (US)').source).toMatch(/from memory/);
  });
});

describe('lots', () => {
  const lots = (...rows: (string | number)[][]) =>
    withRows(barTables([base, scent()]), 'Lots', ...rows);

  it('finds what expired on the shelf, good through its last day', () => {
    const tables = lots(
      ['L1', 'Base', '2024-01-01', 500, 5, '2024-05-31'],
      ['L2', 'Base', '2024-01-01', 500, 5, '2024-06-01'],
      ['L3', 'Scent', '2024-01-01', 50, 5, ''],
    );
    expect(line(tables, 'Expired lot on hand')).toMatchObject({
      check: 'Expired lot on hand: L1 (Base)',
      value: '2024-05-31',
      limit: '2024-06-01',
      result: 'over',
    });
    expect(line(tables, 'Lots on hand without')).toMatchObject({ value: 'L3', result: 'unknown' });
  });

  it('leaves out what is used up, and is unknown with nothing on hand', () => {
    let tables = lots(['L1', 'Base', '2024-01-01', 500, 5, '2024-05-31']);
    const wasted = ['E1', '2024-03-01', 'wasted', 'Base', -500, 'L1', -5];
    tables = withRows(tables, 'LedgerLines', wasted);
    expect(line(tables, 'Expired lots on hand')).toMatchObject({ result: 'unknown' });
    expect(
      line(lots(['L2', 'Base', '2024-01-01', 5, 5, '2025-01-01']), 'Expired lots on hand'),
    ).toMatchObject({ result: 'ok' });
  });

  it('finds what had expired when it was poured, through leftovers as well, unless undone', () => {
    let tables = lots(['L1', 'Base', '2024-01-01', 500, 5, '2024-02-01']);
    tables = withRows(
      tables,
      'Batches',
      ['B1', '2024-02-02', 'Other', 5, 5, 'posted'],
      ['B2', '2024-02-05', 'Bar', 5, 5, 'posted'],
    );
    tables = withRows(tables, 'Designs', ['Other', '', '']);
    tables = withRows(
      tables,
      'LedgerLines',
      ['B1.01', '2024-02-02', 'used', 'Base', -100, 'L1', -1, 'B1'],
      ['B1.02', '2024-02-02', 'left over', 'Base leftover', 20, 'B1', 1, 'B1'],
      ['B2.01', '2024-02-05', 'used', 'Base leftover', -20, 'B1', -1, 'B2'],
    );
    expect(line(tables, 'Expired lot used')).toMatchObject({
      check: 'Expired lot used: L1 (Base) in batch B1',
      value: '2024-02-01',
      limit: '2024-02-02',
      result: 'over',
    });
    const undone = withRows(tables, 'LedgerLines', [
      'B2.01.R',
      '2024-02-06',
      'reversed',
      'Base leftover',
      20,
      'B1',
      1,
      'B2',
      '',
      'B2.01',
    ]);
    expect(line(undone, 'Expired lots used')).toMatchObject({ result: 'unknown' });
  });
});

describe('the lines together', () => {
  it('ends by saying who decides, and is never ok without figures', () => {
    const bare = linesOf(
      barTables([
        { name: 'Base', g: 50 },
        { name: 'Dye', kind: 'colourant', g: 1 },
      ]),
    );
    expect(bare.filter(({ result }) => result === 'ok')).toEqual([]);
    expect(bare.at(-1)).toMatchObject({ check: 'Fit to be sold', result: 'unknown' });
    expect(bare.at(-1)?.source).toMatch(/local rules and a licensed assessor decide/);
    expect(bare.every(({ source }) => source !== '')).toBe(true);
  });

  it('refuses a design without layers', () => {
    const book = bookOf(barTables([]));
    expect(refusal(checksOf(book, designOf(book), TODAY)).sentence).toMatch(/no lines in Layers/);
  });
});

describe('a bar in its mold', () => {
  const mold = (fillG: number | string) =>
    withCell(barTables([base, scent()]), 'Molds', 2, 'Fill g', fillG);

  it.each([
    // One of six cavities; the bar weighs 97 + 3 g.
    [510, 85, 'over'],
    [600, 100, 'ok'],
    [700, 116.667, 'ok'],
  ])('%j g for six cavities is %j g for each: %s', (fillG, limit, result) => {
    expect(line(mold(fillG), 'Layers of one bar')).toMatchObject({ value: 100, limit, result });
  });

  it('is not looked at where the mold’s Fill g is blank', () => {
    expect(linesOf(mold('')).some(({ check }) => check.startsWith('Layers of'))).toBe(false);
  });
});

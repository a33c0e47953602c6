import type { Cell, TableData } from '../../src/workbook/port.ts';

/** A table as a range: its headers, then its rows. */
export type Range = readonly (readonly Cell[])[];

/** Tables by name; the names are for tests alone, since functions go by the headers. */
export type Tables = Readonly<Record<string, Range>>;

/** Writes a table as it looks: headers and rows of cells. */
export const table = (headers: string, ...rows: readonly (readonly Cell[])[]): Range => [
  headers.split(' | '),
  ...rows,
];

/** The ranges of some tables, as BOOK takes them. */
export const ranges = (tables: Tables): Range[] => Object.values(tables);

/** The same tables as a host hands them over. */
export const tableData = (tables: Tables): TableData[] =>
  Object.entries(tables).map(([name, [headers = [], ...rows]]) => ({
    name,
    headers: headers.map(String),
    rows,
  }));

/** A copy with more rows in one table. */
export function withRows(
  tables: Tables,
  name: string,
  ...rows: readonly (readonly Cell[])[]
): Tables {
  return { ...tables, [name]: [...tableOf(tables, name), ...rows] };
}

/** A copy with one cell changed; row 1 is the first under the headers. */
export function withCell(
  tables: Tables,
  name: string,
  row: number,
  header: string,
  cell: Cell,
): Tables {
  const range = tableOf(tables, name);
  const at = columnOf(range, header);
  if (range[row] === undefined) throw new Error(`${name} has no row ${row}.`);
  return {
    ...tables,
    [name]: range.map((cells, y) =>
      y === row ? cells.map((c, x) => (x === at ? cell : c)) : cells,
    ),
  };
}

/** A copy with one column taken out. */
export function withoutColumn(tables: Tables, name: string, header: string): Tables {
  const range = tableOf(tables, name);
  const at = columnOf(range, header);
  return { ...tables, [name]: range.map((cells) => cells.filter((_, x) => x !== at)) };
}

/** A copy with one setting set or changed. */
export function withSetting(tables: Tables, setting: string, value: Cell): Tables {
  const [headers = [], ...rows] = tableOf(tables, 'Settings');
  const others = rows.filter(([name]) => name !== setting);
  return { ...tables, Settings: [headers, ...others, [setting, value]] };
}

function tableOf(tables: Tables, name: string): Range {
  const range = tables[name];
  if (range === undefined) throw new Error(`There is no table ${name}.`);
  return range;
}

function columnOf(range: Range, header: string): number {
  const at = range[0]?.indexOf(header) ?? -1;
  if (at < 0) throw new Error(`There is no column ${header}.`);
  return at;
}

/**
 * A workshop of few round figures: three sections of 36 tiles of 25 g each, a blend, an embed, a
 * seal and a fill, scent, paint and a box. All prices are invented.
 */
export const workshop: Tables = {
  Settings: table(
    'Setting | Value | Note',
    ['Currency', 'USD', ''],
    ['Labour rate per hour', 18, ''],
    ['Overhead per bar', 0.25, ''],
    ['Valuation', 'FIFO', ''],
    ['Scale step g', 1, ''],
    ['History days', 10, ''],
  ),
  Materials: table(
    'Material | Kind | Unit | Density g/ml | Drops per ml | Pack size | Pack price | Lead days | Lead days SD | Service % | Least packs | Supplier',
    ['Clear base', 'base', 'g', 1.05, '', 5000, 40, 6, 2, 90, 1, 'Cove Supply'],
    ['White base', 'base', 'g', 1.04, '', 5000, 45, 6, '', '', '', 'Cove Supply'],
    ['Blue mica', 'colourant', 'g', '', '', 50, 10, 9, '', '', '', ''],
    ['Green drops', 'colourant', 'ml', 1.2, 25, 100, 15, '', '', '', '', ''],
    ['Orange oil', 'fragrance', 'ml', 0.85, '', 200, 30, '', '', '', '', ''],
    ['Glycerin', 'extra', 'ml', 1.25, '', 500, 10, '', '', '', '', ''],
    ['Alcohol', 'extra', 'ml', 0.8, '', 500, 5, '', '', '', '', ''],
    ['Box', 'packaging', 'each', '', '', 50, 20, 3, '', '', '', ''],
  ),
  Lots: table(
    'Lot | Material | Received | Quantity | Paid | Freight | Best before | Supplier',
    ['C1', 'Clear base', '2024-01-05', 2000, 15, 1, '2025-06-30', ''],
    ['C2', 'Clear base', '2024-02-05', 3000, 24, 3, '2025-03-31', ''],
    ['W1', 'White base', '2024-01-05', 2000, 18, 0, '', ''],
    ['M1', 'Blue mica', '2024-01-05', 100, 20, '', '', ''],
    ['G1', 'Green drops', '2024-01-05', 100, 15, '', '', ''],
    ['O1', 'Orange oil', '2024-01-05', 200, 30, '', '2024-12-31', ''],
    ['Y1', 'Glycerin', '2024-01-05', 500, 10, '', '', ''],
    ['A1', 'Alcohol', '2024-01-05', 500, 5, '', '', ''],
    ['B1', 'Box', '2024-01-05', 50, 20, '', '', ''],
  ),
  LedgerLines: table(
    'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
  ),
  Molds: table(
    'Mold | Makes | Cavities | Fill g | Scrape g | Sections | Price | Life fills | Set minutes',
    ['Tiles', 'tiles', 36, 25, 0, 3, 12, 100, 30],
    ['Scraped tiles', 'tiles', 36, 25, 5, 1, 12, 100, 30],
    ['Lighthouse', 'embeds', 6, 30, 0, 1, 9, 90, 20],
    ['Six bars', 'bars', 6, '', '', 2, 24, 200, 60],
  ),
  Colours: table(
    'Colour | Ingredient | Amount | Measure',
    ['Slate', 'Clear base', 97, 'g'],
    ['Slate', 'Blue mica', 3, 'g'],
    ['Teal', 'Clear base', 99.04, 'g'],
    ['Teal', 'Green drops', 20, 'drops'],
    ['Foam', 'White base', 1, 'parts'],
    ['Mist', 'Slate', 15, 'g'],
    ['Mist', 'Foam', 10, 'g'],
  ),
  Designs: table(
    'Design | Bar mold | Labour minutes | Setup minutes | Yield % | Price | Net g | Hands-off hours',
    ['Tide Pool', 'Six bars', 10, 20, '', 9.5, 95, 24],
    ['Plain Bar', '', '', '', '', '', '', ''],
    ['Half Yield', 'Six bars', 10, 20, 50, '', '', ''],
  ),
  Layers: table(
    'Design | Layer | Part | Item | Mold | Per bar | Per',
    ['Tide Pool', '1', 'tiles', 'Slate', 'Tiles', 18, 'each'],
    ['Tide Pool', '1', 'tiles', 'Teal', 'Tiles', 9, 'each'],
    ['Tide Pool', '1', 'tiles', 'Mist', 'Tiles', 9, 'each'],
    ['Tide Pool', '2', 'embed', 'White base', 'Lighthouse', 1, 'each'],
    ['Tide Pool', '3', 'pour', 'Clear base', '', 17.5, 'g'],
    ['Tide Pool', '4', 'pour', 'Clear base', '', 40, 'g'],
    ['Tide Pool', '5', 'scent', 'Orange oil', '', 2, '%'],
    ['Tide Pool', '6', 'paint', 'Glycerin', '', 0.5, 'ml'],
    ['Tide Pool', '6', 'paint', 'Alcohol', '', 1, 'ml'],
    ['Tide Pool', '7', 'pack', 'Box', '', 1, 'each'],
    ['Plain Bar', '1', 'pour', 'Foam', '', 50, 'g'],
    ['Half Yield', '1', 'pour', 'Clear base', '', 50, 'g'],
    ['Half Yield', '2', 'tiles', 'Slate', 'Scraped tiles', 9, 'each'],
  ),
  Batches: table(
    'Batch | Poured | Design | Bars | Good | Seconds | Minutes | Material cost | Cost per bar | Ready on | State | By | Note',
  ),
  Plan: table('Plan line | Design | Bars | Ready by | Fair', [
    'P1',
    'Tide Pool',
    12,
    '2024-12-05',
    'Harbour Fair',
  ]),
  Fairs: table('Fair | Opens | Stall fee | Travel | Other cost | Hours', [
    'Harbour Fair',
    '2024-12-06',
    40,
    12,
    0,
    8,
  ]),
  Sales: table('Sale | Sold on | Design | Bars | Price each | Fair | Fees'),
};

import { tables as specs } from '../../src/workbook/schema.ts';
import { fullWorkshop } from './full-workshop.ts';
import { ranges } from './small-book.ts';

/** A small generator of chances, the same on every machine (Mulberry32). */
export function dice(seed: number): (sides: number) => number {
  let state = seed;
  return (sides) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % sides;
  };
}

/** What may turn up in a cell: right, nearly right, and never right. */
export const junk: readonly unknown[] = [
  '',
  ' ',
  0,
  -0,
  1,
  -1,
  0.1,
  1e-9,
  1e12,
  -1e12,
  1e13,
  1e300,
  5e-324,
  45_300,
  2_958_466,
  1e-300,
  true,
  false,
  'yes',
  'x',
  '12',
  '1e5',
  'NaN',
  'Infinity',
  '#N/A',
  '#REF!',
  '=1+1',
  '=HYPERLINK("http://x","y")',
  '2024-05-01',
  '2024-02-30',
  '9999-12-31',
  '1/2/2024',
  'Clear base',
  'clear  BASE',
  'Slate',
  'Slate leftover',
  'Teal × Tiles',
  'Tide Pool',
  'Tiles',
  'C1',
  'g',
  'ml',
  'drops',
  'parts',
  'each',
  '%',
  'base',
  'used',
  'reversed',
  'counted',
  'tiles',
  'pour',
  'Currency',
  'JPY',
  'Average',
  '__proto__',
  'constructor',
  'toString',
  '\u0000',
  '\ud800',
  'é'.normalize('NFD'),
  '×',
  ' × ',
  'n'.repeat(400),
  '→\n',
];

/** What no host hands over, and what must not end in a fault all the same. */
export const neverCells: readonly unknown[] = [
  null,
  undefined,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  { type: 'Error' },
  [1],
  () => 1,
];

const headers = Object.values(specs).flatMap(({ columns }) =>
  Object.values(columns).map(({ header }) => header),
);

/** A book of the small workshop with some harm done to it, or of nothing but junk. */
export function randomBook(roll: (sides: number) => number): unknown[][][] {
  const pick = <T>(things: readonly T[]): T => things[roll(things.length)] as T;
  const anyCell = (): unknown => (roll(60) === 0 ? pick(neverCells) : pick(junk));
  if (roll(5) === 0) {
    return Array.from({ length: 1 + roll(4) }, () =>
      Array.from({ length: roll(6) }, (_, y) =>
        Array.from({ length: roll(9) }, () => (y === 0 && roll(8) > 0 ? pick(headers) : anyCell())),
      ),
    );
  }
  const book: unknown[][][] = ranges(fullWorkshop).map((range) => range.map((row) => [...row]));
  for (let harm = roll(4); harm >= 0; harm -= 1) {
    const range = pick(book);
    const row = range[roll(range.length)] ?? [];
    const what = roll(12);
    if (what < 7) row[roll(row.length + 1)] = anyCell();
    else if (what === 7) range.splice(roll(range.length), 1);
    else if (what === 8) range.push(row.map(() => anyCell()));
    else if (what === 9) range.push([...row]);
    else if (what === 10) book.splice(roll(book.length), 1);
    else for (const cells of range) cells.splice(roll(cells.length), roll(2));
    if (book.length === 0) break;
  }
  return book;
}

import { expect, it } from 'vitest';
import { tables as specs } from '../../src/workbook/schema.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { type CallFunction, CellError, loadOnce } from '../support/worksheet-functions.ts';
import { fullWorkshop } from '../support/full-workshop.ts';
import { type Range, ranges, type Tables, withSetting } from '../support/small-book.ts';

const BOOKS = 10_000;
const SEED = 20_261_125;

/** A small generator of chances, the same on every machine (Mulberry32). */
function dice(seed: number): (sides: number) => number {
  let state = seed;
  return (sides) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % sides;
  };
}

/** What may turn up in a cell: right, nearly right, and never right. */
const junk: readonly unknown[] = [
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
const neverCells: readonly unknown[] = [
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
function randomBook(roll: (sides: number) => number): unknown[][][] {
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

/** Calls, and answers what came back or the sentence; anything but a cell error escapes. */
function answerOf(call: CallFunction, id: string, ...args: readonly unknown[]): unknown {
  try {
    return call(id, ...args);
  } catch (problem) {
    if (!(problem instanceof CellError)) throw problem;
    return problem;
  }
}

function check(answer: unknown, what: string): void {
  if (answer instanceof CellError) {
    expect(['#VALUE!', '#N/A', '#DIV/0!'], what).toContain(answer.code);
    if (
      answer.message.length < 12 ||
      answer.message.length > 6000 ||
      /fault of its own|undefined|NaN|\[object/u.test(answer.message.replace(/"[^"]*"/gu, ''))
    )
      throw new Error(`${what}: ${answer.message}`);
    return;
  }
  for (const cell of Array.isArray(answer) ? answer.flat() : [answer]) {
    if (
      typeof cell === 'number'
        ? !Number.isFinite(cell)
        : typeof cell !== 'string' && typeof cell !== 'boolean'
    )
      throw new Error(`${what} answers ${String(cell)}`);
  }
}

it(`answers or says what to mend for ${BOOKS} random books`, async () => {
  const call = await loadOnce();
  const roll = dice(SEED);
  let read = 0;
  for (let number = 0; number < BOOKS; number += 1) {
    const handle = answerOf(call, 'BOOK', ...randomBook(roll));
    check(handle, `book ${number}`);
    if (handle instanceof CellError) continue;
    read += 1;
    const design = roll(9) === 0 ? junk[roll(junk.length)] : 'Tide Pool';
    const item = roll(3) === 0 ? junk[roll(junk.length)] : 'Clear base';
    const calls: readonly (readonly unknown[])[] = [
      ['MELTSHEET', design, 1 + roll(40), handle, roll(2) === 0],
      ['MATERIALS', design, 1 + roll(40), handle, roll(2) === 0],
      ['CANMAKE', design, handle],
      ['COSTPERBAR', design, handle, 1 + roll(40), 45_400],
      ['COSTLINES', design, handle, 1 + roll(40), 45_400],
      ['STOCKLIST', handle, 45_400],
      ['ONHAND', item, handle, 45_400],
      ['STOCKVALUE', item, handle, 45_400],
      ['UNITCOST', item, handle, 45_400],
      ['REORDERPOINT', item, handle, 45_400],
      ['BASEPERMOLD', 'Tiles', handle, roll(4), junk[roll(junk.length)]],
      ['AMOUNT', roll(100), junk[roll(junk.length)], junk[roll(junk.length)], item, handle],
    ];
    // Two questions of each book: twelve of each would ask the same things too often.
    for (const [id, ...args] of [
      calls[roll(calls.length)],
      calls[roll(calls.length)],
    ] as unknown[][]) {
      check(answerOf(call, String(id), ...args), `book ${number}, ${String(id)}`);
    }
  }
  // The check is worth something only where both ends are reached often.
  expect(read).toBeGreaterThan(BOOKS / 20);
  expect(read).toBeLessThan(BOOKS * 0.9);
});

it('answers or says what to mend for arguments of any kind', async () => {
  const call = await loadOnce();
  const roll = dice(SEED + 1);
  const handle = call('BOOK', ...ranges(fullWorkshop));
  const ids = [
    'BOOK',
    'BASEPERMOLD',
    'TILECOUNT',
    'MELTSHEET',
    'MATERIALS',
    'CANMAKE',
    'ONHAND',
    'STOCKVALUE',
    'UNITCOST',
    'STOCKLIST',
    'REORDERPOINT',
    'SAFETYSTOCK',
    'ORDERSIZE',
    'COSTPERBAR',
    'COSTLINES',
    'AMOUNT',
  ];
  const anything = (): unknown => {
    const kind = roll(8);
    if (kind === 0) return neverCells[roll(neverCells.length)];
    if (kind === 1) return [[junk[roll(junk.length)]]];
    if (kind === 2) return [[junk[roll(junk.length)], 1], ['x']];
    return kind < 5 ? handle : junk[roll(junk.length)];
  };
  for (let number = 0; number < 20_000; number += 1) {
    const id = ids[roll(ids.length)] ?? '';
    check(
      answerOf(call, id, ...Array.from({ length: roll(6) }, anything)),
      `call ${number}, ${id}`,
    );
  }
});

it('answers for every spread of sizes that the limits allow, or says that a number is out of reach', async () => {
  const call = await loadOnce();
  const sizes: readonly Cell[] = [1e-300, 1e-12, 1e-6, 1, 1e6, 1e12];
  const at = (tables: Tables, name: string, row: number, header: string, cell: Cell): Tables => {
    const range: Range = tables[name] ?? [];
    const column = range[0]?.indexOf(header) ?? -1;
    return {
      ...tables,
      [name]: range.map((cells, y) =>
        y === row ? cells.map((c, x) => (x === column ? cell : c)) : cells,
      ),
    };
  };
  for (const lot of sizes) {
    for (const recipe of sizes) {
      for (const fill of sizes) {
        let tables = at(fullWorkshop, 'Lots', 1, 'Quantity', lot);
        tables = at(tables, 'Colours', 1, 'Amount', recipe);
        tables = at(tables, 'Molds', 1, 'Fill g', fill);
        tables = at(tables, 'Designs', 1, 'Yield %', lot === 1 ? 1e-12 : 100);
        const book = answerOf(
          call,
          'BOOK',
          ...ranges(withSetting(tables, 'Scale step g', recipe === 1 ? 1e-300 : 1)),
        );
        check(book, 'BOOK');
        for (const id of ['MELTSHEET', 'MATERIALS'])
          check(answerOf(call, id, 'Tide Pool', 40, book), id);
        for (const id of ['COSTPERBAR', 'COSTLINES'])
          check(answerOf(call, id, 'Tide Pool', book, 40), id);
        check(answerOf(call, 'CANMAKE', 'Tide Pool', book), 'CANMAKE');
        check(answerOf(call, 'STOCKLIST', book), 'STOCKLIST');
      }
    }
  }
});

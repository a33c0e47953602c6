import { expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { type CallFunction, CellError, loadOnce } from '../support/worksheet-functions.ts';
import { fullWorkshop } from '../support/full-workshop.ts';
import { dice, junk, neverCells, randomBook } from '../support/random-books.ts';
import { type Range, ranges, type Tables, withSetting } from '../support/small-book.ts';

const BOOKS = 10_000;
/** Books in one test: short enough for its time limit on a machine with ten times as much to do. */
const AT_A_TIME = 1000;
const SEED = 20_261_125;

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

it.each(Array.from({ length: BOOKS / AT_A_TIME }, (_, at) => at * AT_A_TIME))(
  `answers or says what to mend for ${BOOKS} random books: from %i`,
  async (from) => {
    const call = await loadOnce();
    const roll = dice(SEED + from);
    let read = 0;
    for (let number = from; number < from + AT_A_TIME; number += 1) {
      const handle = answerOf(call, 'BOOK', ...randomBook(roll));
      check(handle, `book ${number}`);
      if (handle instanceof CellError) continue;
      read += 1;
      askTwice(call, handle, roll, number);
    }
    // The check is worth something only where both ends are reached often.
    expect(read).toBeGreaterThan(AT_A_TIME / 20);
    expect(read).toBeLessThan(AT_A_TIME * 0.9);
  },
);

/** Two questions of each book: twelve of each would ask the same things too often. */
function askTwice(
  call: CallFunction,
  handle: unknown,
  roll: (sides: number) => number,
  number: number,
): void {
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
  for (const [id, ...args] of [
    calls[roll(calls.length)],
    calls[roll(calls.length)],
  ] as unknown[][]) {
    check(answerOf(call, String(id), ...args), `book ${number}, ${String(id)}`);
  }
}

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

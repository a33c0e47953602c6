import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Exact } from '../../src/domain/kernel/exact.ts';
import { designNames, LAST_DAY } from '../support/arbitrary-book.ts';
import { workedWorkshop } from '../support/arbitrary-pours.ts';
import { type CallFunction, CellError, loadOnce } from '../support/worksheet-functions.ts';
import { freeRows } from '../support/free-rows.ts';
import { itemsOf, readTables } from '../support/ledger-of.ts';
import { type Range, ranges, type Tables } from '../support/small-book.ts';

/** Everything the functions say of a book: answers, or error codes with their sentences. */
function allAnswers(call: CallFunction, tables: Tables): Record<string, unknown> {
  const book = call('BOOK', ...ranges(tables));
  const answers: Record<string, unknown> = {};
  const ask = (id: string, ...args: readonly unknown[]): void => {
    try {
      answers[[id, ...args].join(' ')] = call(
        id,
        ...args.map((arg) => (arg === 'book' ? book : arg)),
      );
    } catch (problem) {
      if (!(problem instanceof CellError)) throw problem;
      answers[[id, ...args].join(' ')] = `${problem.code} ${problem.message}`;
    }
  };
  for (const design of designNames) {
    for (const use of [false, true]) {
      ask('MELTSHEET', design, 7, 'book', use);
      ask('MATERIALS', design, 7, 'book', use);
    }
    ask('CANMAKE', design, 'book');
    ask('COSTPERBAR', design, 'book', 5, LAST_DAY);
    ask('COSTLINES', design, 'book', 5, LAST_DAY);
  }
  for (const { name, kind } of itemsOf(readTables(tables)).sort((a, b) =>
    a.name < b.name ? -1 : 1,
  )) {
    for (const id of ['ONHAND', 'STOCKVALUE', 'UNITCOST']) ask(id, name, 'book', LAST_DAY);
    if (kind === 'material') ask('REORDERPOINT', name, 'book', LAST_DAY);
  }
  for (const mold of ['Tiles', 'Heron', 'Bar mold']) ask('BASEPERMOLD', mold, 'book', 3, 'Fog');
  ask('STOCKLIST', 'book', LAST_DAY);
  return answers;
}

const numbersIn = (answer: unknown): number[] =>
  (Array.isArray(answer) ? answer.flat() : [answer]).filter((cell) => typeof cell === 'number');

describe('every answer', () => {
  it('is a finite number or a text, and an error of the three kinds with a sentence', async () => {
    const call = await loadOnce();
    fc.assert(
      fc.property(workedWorkshop, (tables) => {
        for (const [question, answer] of Object.entries(allAnswers(call, tables))) {
          for (const number of numbersIn(answer))
            expect(Number.isFinite(number), question).toBe(true);
          if (typeof answer === 'string')
            expect(answer).toMatch(/^#(VALUE!|N\/A|DIV\/0!) .{15,}\.$/su);
        }
      }),
      { numRuns: 150 },
    );
  });

  it('does not depend on the order of tables, rows and columns, nor on columns of the maker’s own', async () => {
    await fc.assert(
      fc.asyncProperty(workedWorkshop, fc.infiniteStream(fc.nat()), async (tables, chances) => {
        const shuffled = shuffleTables(tables, () => Number(chances.next().value));
        // Each in a memory of its own: a remembered book would not be read again.
        const [one, other] = [await loadOnce(), await loadOnce()];
        expect(other('BOOK', ...ranges(shuffled))).toBe(one('BOOK', ...ranges(tables)));
        expect(allAnswers(other, shuffled)).toEqual(allAnswers(one, tables));
      }),
      { numRuns: 60 },
    );
  });

  it('keeps names that look like formulas as they are', async () => {
    const call = await loadOnce();
    fc.assert(
      fc.property(workedWorkshop, (tables) => {
        const stock = call('STOCKLIST', call('BOOK', ...ranges(tables)), LAST_DAY) as unknown[][];
        expect(stock.map(([item]) => item)).toContain('=1+1');
      }),
      { numRuns: 20 },
    );
  });
});

describe('every answer after an edit', () => {
  it('is what a memory that never saw the tables before gives', async () => {
    const quantityTimes = (rows: Range, row: number, by: number): Range =>
      rows.map((cells, y) =>
        y > 0 && y === row ? cells.map((cell, x) => (x === 4 ? Number(cell) * by : cell)) : cells,
      );
    // One more of an item on the shelf than was thought, as a stocktake writes it.
    const countedOneMore = (rows: Range, row: number): Range => {
      const [, , , item = ''] = rows[row] ?? [];
      const line = [`N-${String(rows.length)}`, LAST_DAY, 'counted', item, 1, '', 1, '', 'Me', ''];
      return row === 0 ? rows : [...rows, line];
    };
    await fc.assert(
      fc.asyncProperty(
        workedWorkshop,
        fc.array(fc.tuple(fc.nat(), fc.constantFrom(0.5, 2, 'counted' as const)), {
          minLength: 1,
          maxLength: 3,
        }),
        async (start, edits) => {
          const warm = await loadOnce();
          allAnswers(warm, start);
          let tables = start;
          for (const [drawn, edit] of edits) {
            const moves = tables['LedgerLines'] ?? [];
            const free = freeRows(moves.slice(1));
            const row = 1 + (free[drawn % Math.max(1, free.length)] ?? -1);
            const edited =
              edit === 'counted' ? countedOneMore(moves, row) : quantityTimes(moves, row, edit);
            tables = { ...tables, LedgerLines: edited };
            expect(allAnswers(warm, tables)).toEqual(allAnswers(await loadOnce(), tables));
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('the lines of a bar’s cost', () => {
  it('sum to the cost per bar exactly, as the decimals that the cells show', async () => {
    const call = await loadOnce();
    fc.assert(
      fc.property(
        workedWorkshop,
        fc.constantFrom(...designNames),
        fc.integer({ min: 1, max: 80 }),
        (tables, design, bars) => {
          const book = call('BOOK', ...ranges(tables));
          const perBar = call('COSTPERBAR', design, book, bars, LAST_DAY) as number;
          const [, ...lines] = call('COSTLINES', design, book, bars, LAST_DAY) as [
            string,
            number,
            number,
          ][];
          const sum = lines.reduce((total, [, cost]) => total.plus(String(cost)), new Exact(0));
          expect(sum.toString()).toBe(new Exact(String(perBar)).toString());
          for (const [line, cost] of lines) expect(cost, line).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('the handle', () => {
  it('changes with any cell that a table’s own columns hold', async () => {
    const call = await loadOnce();
    fc.assert(
      fc.property(workedWorkshop, fc.nat(), fc.nat(), fc.nat(), (tables, a, b, c) => {
        // A note is free text, so the tables stay valid whatever is typed there.
        const names = ['LedgerLines', 'Batches'].filter((name) => (tables[name]?.length ?? 0) > 1);
        const name = names[a % Math.max(1, names.length)];
        if (name === undefined) return;
        const range = tables[name] ?? [];
        const row = 1 + (b % (range.length - 1));
        const at = range[0]?.indexOf('By') ?? -1;
        const edited = range.map((cells, y) =>
          y === row ? cells.map((cell, x) => (x === at ? `${String(cell)}${c}` : cell)) : cells,
        );
        expect(call('BOOK', ...ranges({ ...tables, [name]: edited }))).not.toBe(
          call('BOOK', ...ranges(tables)),
        );
      }),
      { numRuns: 100 },
    );
  });
});

function shuffleTables(tables: Tables, chance: () => number): Tables {
  return Object.fromEntries(
    shuffle(Object.entries(tables), chance).map(([name, range]) => [
      name,
      shuffleRange(range, chance),
    ]),
  );
}

function shuffleRange(range: Range, chance: () => number): Range {
  const [headers = [], ...rows] = range.map((row, y) => [...row, y === 0 ? 'My own' : `${y}`]);
  const columns = shuffle(
    headers.map((_, at) => at),
    chance,
  );
  const blank = headers.map(() => '');
  return [headers, ...shuffle([...rows, blank], chance)].map((row) =>
    columns.map((at) => row[at] ?? ''),
  );
}

function shuffle<T>(things: readonly T[], chance: () => number): T[] {
  const left = [...things];
  return things.flatMap(() => left.splice(chance() % left.length, 1));
}

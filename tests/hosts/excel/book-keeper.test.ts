import { describe, expect, it } from 'vitest';
import { BookKeeper } from '../../../src/hosts/excel/book-keeper.ts';
import { hearOfMissingBooks } from '../../../src/hosts/excel/missing-books.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { type CallFunction, CellError, loadOnce } from '../../support/worksheet-functions.ts';
import { ranges, withCell, workshop } from '../../support/small-book.ts';
import { bookCells, modelOf, withBookCells } from './host/model-of.ts';
import { open, type Opened } from './host/open.ts';
import type { WorkbookModel } from './host/workbook-model.ts';

/** As a partner's computer names a book of other content, or one of another version of ours. */
const PARTNERS = 'book 00000000000000aa';
const ANSWER = { row: 1, column: 0, height: 1, width: 1 };

interface Kept extends Opened {
  readonly keeper: BookKeeper;
  /** All that the pane said, in order; undefined where it took the sentence away. */
  readonly said: (string | undefined)[];
  /** Milliseconds waited, in order. */
  readonly waited: number[];
  readonly call: CallFunction;
  /** What BOOK does in place of answering, as often as there are entries. */
  readonly trouble: string[];
}

/** The small workshop, open and worked out, kept as start.ts has it kept, its functions in one page with it. */
async function opened(): Promise<Kept> {
  const call = await loadOnce();
  const model = withBookCells(modelOf(workshop), { handle: PARTNERS, onHand: 51 });
  const trouble: string[] = [];
  model.calculation.answer = (name, args) => {
    const failed = name === 'POUR.BOOK' ? trouble.shift() : undefined;
    if (failed !== undefined) throw new CellError(failed);
    return call(name.replace('POUR.', ''), ...args) as Cell;
  };
  const excel = open(model);
  const said: (string | undefined)[] = [];
  const waited: number[] = [];
  const keeper = new BookKeeper({
    runLater: excel.runLater,
    wait: (ms) => {
      waited.push(ms);
      return new Promise((done) => setImmediate(done));
    },
    say: (sentence) => said.push(sentence),
  });
  hearOfMissingBooks(() => void keeper.heal());
  await keeper.heal();
  model.calculation.workedOut.length = 0;
  said.length = 0;
  waited.length = 0;
  return { ...excel, call, keeper, said, waited, trouble };
}

/** Someone else's handle comes into the cell named Book, and what hangs on it is worked out. */
function comesIn(model: WorkbookModel, handle: string): void {
  const cell = model.sheet('Start').at(0, 0);
  if (typeof cell !== 'object') throw new Error('There is no Book cell.');
  cell.value = handle;
  askAgain(model);
}

function askAgain(model: WorkbookModel): void {
  model.calculation.setDirty(model.sheet('Start'), ANSWER);
  model.calculation.recalculate();
}

const booksRead = ({ model }: Kept): number =>
  model.calculation.workedOut.filter((name) => name === 'POUR.BOOK').length;

/** All that the keeper was asked for is done. */
const untilKept = ({ keeper }: Kept): Promise<unknown> => keeper.look();

describe('a handle that no memory holds', () => {
  it('heals when a partner’s comes in, long after the start', async () => {
    const kept = await opened();
    expect(bookCells(kept.model).onHand).toBe(50);
    comesIn(kept.model, PARTNERS);
    expect(bookCells(kept.model).onHand).toBe('#N/A');
    await untilKept(kept);
    // 50 boxes in lot B1 of the small workshop.
    expect(bookCells(kept.model).onHand).toBe(50);
    expect(kept.said.filter(Boolean)).toEqual([]);
  });

  it('has the book read once, however many cells ask and however many such handles there are', async () => {
    const kept = await opened();
    comesIn(kept.model, PARTNERS.replace('aa', 'ab'));
    comesIn(kept.model, PARTNERS.replace('aa', 'ac'));
    for (let cell = 0; cell < 20; cell += 1) askAgain(kept.model);
    await untilKept(kept);
    expect(booksRead(kept)).toBe(1);
  });

  it('is tried once, so that two versions of the add-in never recalculate each other for ever', async () => {
    const kept = await opened();
    for (let round = 0; round < 5; round += 1) {
      comesIn(kept.model, 'a handle of another version');
      await untilKept(kept);
    }
    expect(booksRead(kept)).toBe(1);
  });

  it('heals again where its book was read and has left the memory since', async () => {
    const kept = await opened();
    const { handle } = bookCells(kept.model);
    for (const round of [1, 2]) {
      // Books of other cells, such as what-ifs, push it out.
      for (let other = 1; other <= 16; other += 1)
        kept.call('BOOK', ...ranges(withCell(workshop, 'Lots', 1, 'Paid', 16 * round + other)));
      comesIn(kept.model, String(handle));
      expect(bookCells(kept.model).onHand).toBe('#N/A');
      await untilKept(kept);
      expect(bookCells(kept.model).onHand).toBe(50);
    }
  });
});

describe('a Book cell that does not come to an end', () => {
  it.each(['#BUSY!', '#GETTING_DATA', '#N/A', '#NAME?'])(
    '%s is worked out again by the pane, which says so',
    async (error) => {
      const kept = await opened();
      kept.trouble.push(error, error);
      kept.model.table('Materials').setCell(0, 1, 'base');
      expect(bookCells(kept.model).handle).toBe(error);
      await kept.keeper.look();
      expect(bookCells(kept.model).onHand).toBe(50);
      expect(kept.said).toEqual([
        expect.stringContaining(`Book shows ${error}. It is worked out again: try 1 of 3`),
        expect.stringContaining('try 2 of 3'),
        undefined,
      ]);
    },
  );

  it('is left to finish by itself first', async () => {
    const whole = (await loadOnce())('BOOK', ...ranges(workshop));
    const kept = await opened();
    kept.trouble.push('#BUSY!');
    kept.model.table('Materials').setCell(0, 1, 'base');
    const looked = kept.keeper.look();
    kept.host.beforeSync = (sync) => {
      // Excel comes with the answer once the pane has looked for the first time: names, then the cell.
      if (sync === first + 3) comesIn(kept.model, String(whole));
    };
    const first = kept.host.syncs;
    await looked;
    expect(booksRead(kept)).toBe(1);
    expect(kept.said).toEqual([undefined]);
  });

  it('is given up after three tries, with what the maker can do', async () => {
    const kept = await opened();
    kept.trouble.push(...Array<string>(9).fill('#BUSY!'));
    kept.model.table('Materials').setCell(0, 1, 'base');
    await kept.keeper.look();
    expect(booksRead(kept)).toBe(4);
    expect(kept.said.at(-1)).toMatch(/still shows #BUSY!.*press F2, then Enter.*reopen/);
    expect(kept.waited).toEqual([500, 3_000, 10_000, 30_000]);
  });

  it('that refuses the tables is tried once more and then taken at its word', async () => {
    const kept = await opened();
    const materials = kept.model.table('Materials');
    materials.setCell(0, 1, 'no kind');
    expect(bookCells(kept.model).handle).toBe('#VALUE!');
    await kept.keeper.look();
    expect(booksRead(kept)).toBe(2);
    expect(kept.said.at(-1)).toMatch(/Book shows #VALUE!.*Point at it to read what to mend/);
    materials.setCell(0, 1, 'base');
    await kept.keeper.look();
    expect(kept.said.at(-1)).toBeUndefined();
  });

  it('says what stands in the way where Excel refuses, and what the maker can do', async () => {
    const kept = await opened();
    kept.host.faults = [{ sync: kept.host.syncs + 1, wire: 5012 }];
    await kept.keeper.heal();
    expect(kept.said.at(-1)).toMatch(/Reload the browser page.*press Enter in the cell named Book/);
    await kept.keeper.look();
    expect(kept.said.at(-1)).toBeUndefined();
  });
});

it('a workbook without a Book cell is left alone', async () => {
  const kept = await opened();
  kept.model.names.clear();
  expect(await kept.keeper.heal()).toBe(false);
  expect(booksRead(kept)).toBe(0);
});

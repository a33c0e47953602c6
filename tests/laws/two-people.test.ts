import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Book } from '../../src/domain/book/book.ts';
import { postBatch } from '../../src/domain/ledger/post-batch.ts';
import { undoBatch } from '../../src/domain/ledger/undo-batch.ts';
import { changeForBatch, changeForUndo } from '../../src/workbook/change.ts';
import type { Cell, Change, HostPort, TableData } from '../../src/workbook/port.ts';
import { readTablesOf } from '../../taskpane/read-workbook.ts';
import { modelOf } from '../hosts/excel/host/model-of.ts';
import { open } from '../hosts/excel/host/open.ts';
import { sure } from '../support/ledger-of.ts';
import { createMemoryPort } from '../support/memory-port.ts';
import { day, pourOf } from '../support/pour-of.ts';
import { tableData, workshop } from '../support/small-book.ts';

const TODAY = day('2024-03-10');

/** Someone with the workbook open: what they saw last, and what they are about to write. */
interface Person {
  readonly name: string;
  readonly port: HostPort;
  readonly written: Change[];
  pending: Change | undefined;
  poured: string[];
}

const person = (name: string, port: HostPort): Person => ({
  name,
  port,
  written: [],
  pending: undefined,
  poured: [],
});

async function readFrom(port: HostPort) {
  const read = readTablesOf(await port.load());
  if (read.kind !== 'ready') throw new Error(read.findings.join('\n'));
  return read;
}

/** Looks at the workbook and makes up a pour, or the undoing of an earlier one, from what is seen. */
async function look(who: Person, bars: number): Promise<void> {
  const { book, names } = await readFrom(who.port);
  const before = who.poured.pop();
  if (before !== undefined && bars % 2 === 0) {
    const undone = undoBatch(book, before, TODAY, who.name);
    who.pending = undone.ok ? sure(changeForUndo(undone.value, names)) : undefined;
    return;
  }
  const batch = `B-${who.name}-${String(who.written.length)}`;
  const posted = sure(postBatch(book, pourNow(book, bars, batch, who.name), TODAY));
  who.pending = posted.kind === 'short' ? undefined : sure(changeForBatch(posted.posting, names));
  if (who.pending !== undefined) who.poured.push(batch);
}

const pourNow = (book: Book, bars: number, batch: string, by: string) => ({
  ...pourOf('Tide Pool', bars)(book),
  batch,
  by,
});

/** Writes what was made up, however long ago, and once more as an impatient hand would. */
async function write(who: Person): Promise<void> {
  const { pending } = who;
  if (pending === undefined) return;
  who.pending = undefined;
  expect(await who.port.apply(pending)).toEqual({ kind: 'applied' });
  who.written.push(pending);
  expect(['already there', 'applied']).toContain((await who.port.apply(pending)).kind);
}

type Act = readonly [who: 0 | 1, does: 'looks' | 'writes' | 'both write', bars: number];
const anyActs: fc.Arbitrary<readonly Act[]> = fc.array(
  fc.tuple(
    fc.constantFrom(0 as const, 1 as const),
    fc.constantFrom('looks' as const, 'looks' as const, 'writes' as const, 'both write' as const),
    fc.integer({ min: 1, max: 3 }),
  ),
  { minLength: 4, maxLength: 14 },
);

async function live(people: readonly [Person, Person], acts: readonly Act[]): Promise<void> {
  for (const [at, does, bars] of acts) {
    if (does === 'looks') await look(people[at], bars);
    else if (does === 'writes') await write(people[at]);
    else await Promise.all(people.map(write));
  }
}

const rowsOf = (tables: readonly TableData[], name: string): readonly (readonly Cell[])[] =>
  (tables.find((table) => table.name === name)?.rows ?? []).filter((row) => row[0] !== '');

/** All that either wrote stands there once, all that was there before stands unchanged, and no more. */
async function expectWhole(people: readonly [Person, Person]): Promise<void> {
  const after = await people[0].port.load();
  const start = tableData(workshop);
  const written = people.flatMap((who) => who.written);
  for (const name of ['LedgerLines', 'Batches']) {
    const before = rowsOf(start, name);
    const rows = rowsOf(after, name);
    const state = start.find((table) => table.name === name)?.headers.indexOf('State') ?? -1;
    // A batch's State alone is ever changed, by who undoes it.
    const lasting = (row: readonly Cell[]) => row.filter((_, at) => at !== state).map(String);
    expect(rows.slice(0, before.length).map(lasting)).toEqual(before.map(lasting));
    const ids = rows.map(([id]) => String(id));
    expect(new Set(ids).size).toBe(ids.length);
    const added = written.flatMap(({ appends }) =>
      appends.filter(({ table }) => table === name).flatMap((append) => append.rows),
    );
    expect(ids.slice(before.length).sort()).toEqual(
      added.map((row) => String(row[name === 'LedgerLines' ? 'Entry' : 'Batch'])).sort(),
    );
  }
  // What both wrote reads as a book.
  await readFrom(people[1].port);
}

describe('two people in one workbook', () => {
  let writes = 0;
  beforeEach(() => {
    writes = 0;
  });
  const count = (people: readonly [Person, Person]): void => {
    writes += people[0].written.length + people[1].written.length;
  };

  it('never overwrite each other, however their looking and writing interleave', async () => {
    await fc.assert(
      fc.asyncProperty(anyActs, async (acts) => {
        const port = createMemoryPort(tableData(workshop));
        const people = [person('ann', port), person('ben', port)] as const;
        await live(people, acts);
        await expectWhole(people);
        count(people);
      }),
      // One seed, so that the count of writes does not hang on luck.
      { numRuns: 60, seed: 2026 },
    );
    expect(writes).toBeGreaterThan(100);
  });

  it('nor in Excel, each with a pane of their own, writing at the same moment', async () => {
    await fc.assert(
      fc.asyncProperty(anyActs, async (acts) => {
        const model = modelOf(workshop);
        const people = [person('ann', open(model).port), person('ben', open(model).port)] as const;
        await live(people, acts);
        await expectWhole(people);
        count(people);
      }),
      { numRuns: 40, seed: 2026 },
    );
    expect(writes).toBeGreaterThan(20);
  });
});

import { describe, expect, it } from 'vitest';
import { healthCheck } from '../../../src/domain/health/health-check.ts';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { changeForRepair } from '../../../src/workbook/change.ts';
import type { TableData } from '../../../src/workbook/port.ts';
import { changeForRepeats, repeatsOf } from '../../../src/workbook/sharing/repeats.ts';
import { readTablesOf } from '../../../taskpane/read-workbook.ts';
import { createMemoryPort } from '../../support/memory-port.ts';
import { soundWorkshop } from '../../taskpane/care/sound-workshop.ts';
import { rowsOf, withRows } from '../../taskpane/small-workshop.ts';

const TODAY = readDay('2026-11-25') ?? 0;
const lost = 'W-1|2026-11-03|wasted|Wrapper|-1|L-8|-0.15|||';
const withMoves = (...lines: string[]): readonly TableData[] =>
  withRows(soundWorkshop, 'LedgerLines', () => rowsOf(lines));

/** Tells the lines apart, then makes every repair that the check offers; the ids and quantities left. */
async function mended(tables: readonly TableData[]) {
  const port = createMemoryPort(tables);
  expect(await port.apply(changeForRepeats(repeatsOf(tables)))).toEqual({ kind: 'applied' });
  for (;;) {
    const read = readTablesOf(port.tables);
    if (read.kind !== 'ready') throw new Error(read.findings.join('\n'));
    const repair = healthCheck(read.book, TODAY, '').find((found) => found.repair)?.repair;
    if (repair === undefined) return { ...read, tables: port.tables };
    const change = changeForRepair(repair, read.names);
    if (!change.ok) throw new Error(change.failure.sentence);
    expect(await port.apply(change.value)).toEqual({ kind: 'applied' });
  }
}

const rows = (tables: readonly TableData[], name: string, ...columns: number[]) =>
  tables.find((table) => table.name === name)?.rows.map((row) => columns.map((at) => row[at]));

describe('lines that share an id', () => {
  it('are told apart by the id of the later ones alone, then taken back by lines', async () => {
    const { tables } = await mended(withMoves(lost, lost, lost));
    expect(rows(tables, 'LedgerLines', 0, 2, 4, 9)).toEqual([
      ['W-1', 'wasted', -1, ''],
      ['W-1.2', 'wasted', -1, ''],
      ['W-1.3', 'wasted', -1, ''],
      ['W-1.2.R', 'reversed', 1, 'W-1.2'],
      ['W-1.3.R', 'reversed', 1, 'W-1.3'],
    ]);
  });

  it('that differ are both kept', async () => {
    const { tables } = await mended(
      withMoves(lost, 'W-1|2026-11-04|wasted|Wrapper|-2|L-8|-0.3|||'),
    );
    expect(rows(tables, 'LedgerLines', 0, 4)).toEqual([
      ['W-1', -1],
      ['W-1.2', -2],
    ]);
  });

  it('in Lots are told apart, and the second purchase counted out', async () => {
    const { tables } = await mended(
      withRows(soundWorkshop, 'Lots', (lots) => [...lots, ...lots.slice(7)]),
    );
    expect(rows(tables, 'Lots', 0)?.slice(-2)).toEqual([['L-8'], ['L-8.2']]);
    expect(rows(tables, 'LedgerLines', 2, 4, 5)).toEqual([['counted', -100, 'L-8.2']]);
  });

  it('in Batches are told apart, and the copy counts as undone', async () => {
    const line = 'B-1|2026-11-01|Plain Wave|6|6|0|30|0|0|2026-11-02|undone||';
    const { book } = await mended(withRows(soundWorkshop, 'Batches', () => rowsOf([line, line])));
    expect([...book.batches.values()].map(({ batch, state }) => [batch, state])).toEqual([
      ['B-1', 'undone'],
      ['B-1.2', 'undone'],
    ]);
  });

  it('are left to the maker where only names tell them, or two batches differ', () => {
    const materials = withRows(soundWorkshop, 'Materials', (all) => [...all, ...all.slice(0, 1)]);
    const batches = withRows(soundWorkshop, 'Batches', () =>
      rowsOf([
        'B-1|2026-11-01|Plain Wave|6|6|0|30|0|0|2026-11-02|posted||',
        'B-1|2026-11-01|Plain Wave|7|7|0|30|0|0|2026-11-02|posted||',
      ]),
    );
    const cased = withMoves(lost, lost.replace('W-1', 'w-1'));
    for (const tables of [materials, batches, cased, soundWorkshop])
      expect(repeatsOf(tables)).toEqual([]);
  });

  it('never take an id that is there', () => {
    const other = lost.replace('W-1', 'W-1.2');
    expect(repeatsOf(withMoves(lost, other, lost)).map(({ newId }) => newId)).toEqual(['W-1.3']);
  });
});

import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { asIfOn } from '../../functions/clock.ts';
import { functions } from '../../functions/index.ts';
import { healthCheck } from '../../src/domain/health/health-check.ts';
import { type Day, isoDate, readDay } from '../../src/domain/kernel/day.ts';
import type { Cell, TableData } from '../../src/workbook/port.ts';
import { readBook, recogniseTables } from '../../src/workbook/read/read-book.ts';
import { demoTables } from '../../src/starter/demo/demo-tables.ts';
import { tablesMovedTo } from '../../src/starter/demo/moved-days.ts';
import { demoDay } from '../../src/starter/demo/season.ts';

/** A day of copying, from two years before the demo was written to five after. */
const copyingDay = fc.integer({ min: demoDay - 730, max: demoDay + 1826 });

/** By how many days a copy's dates lie after the written ones. */
const movedBy = (today: Day): number => today - demoDay - ((((today - demoDay) % 7) + 7) % 7);

describe('the days of a copy of the demo', () => {
  let written: readonly TableData[];
  beforeAll(() => {
    written = demoTables();
  });

  it('are the written ones on the day that it was written for, and the next six', () => {
    for (let after = 0; after < 7; after += 1)
      expect(tablesMovedTo(demoDay + after, written)).toEqual(written);
    expect(tablesMovedTo(demoDay + 7, written)).not.toEqual(written);
    expect(demoTables(demoDay + 365)).toEqual(tablesMovedTo(demoDay + 365, written));
  });

  it('are moved all alike, by whole weeks, and nothing else is', () => {
    const dates = {
      Lots: ['Received', 'Best before'],
      LedgerLines: ['When'],
      Batches: ['Poured', 'Ready on'],
      Plan: ['Ready by'],
      Fairs: ['Opens'],
      Sales: ['Sold on'],
    };
    const isDate = (table: string, header: string) =>
      Object.entries(dates).some(([name, of]) => name === table && of.includes(header));
    fc.assert(
      fc.property(copyingDay, (today) => {
        const moved = tablesMovedTo(today, written);
        expect(Math.abs(movedBy(today) % 7)).toBe(0);
        const wanted = written.map((table) => ({
          ...table,
          rows: table.rows.map((row) =>
            row.map((cell, at) =>
              isDate(table.name, table.headers[at] ?? '') && typeof cell === 'number'
                ? cell + movedBy(today)
                : cell,
            ),
          ),
        }));
        expect(moved).toEqual(wanted);
      }),
      { numRuns: 20 },
    );
  });

  it('leave a season about to begin: a ledger up to the week before, the first fair in the third week', () => {
    fc.assert(
      fc.property(copyingDay, (today) => {
        const moved = tablesMovedTo(today, written);
        const column = (name: string, header: string): number[] => {
          const table = moved.find((each) => each.name === name);
          const at = table?.headers.indexOf(header) ?? -1;
          return (table?.rows ?? []).map((row) => Number(row[at]));
        };
        const last = Math.max(...column('LedgerLines', 'When'), ...column('Lots', 'Received'));
        expect(last).toBeLessThan(today);
        expect(last).toBeGreaterThanOrEqual(today - 7);
        const readyBy = column('Plan', 'Ready by');
        expect(Math.min(...readyBy)).toBeGreaterThanOrEqual(today + 10);
        expect(Math.min(...readyBy)).toBeLessThanOrEqual(today + 16);
        // Serial 7 was a Saturday.
        for (const opens of column('Fairs', 'Opens')) expect(opens % 7).toBe(0);
      }),
      { numRuns: 100 },
    );
  });

  it('leave a plan that fits, on whichever day of the week it is copied', () => {
    const book = ask('BOOK', ...written.map(({ headers, rows }) => [headers, ...rows]));
    for (let after = 0; after < 7; after += 1) {
      const notes = asIfOn(demoDay + after, () => ask('PLANNOTES', book)) as string[][];
      expect(notes.slice(1).filter(([about]) => about !== 'Assumed')).toEqual([]);
    }
  });

  it('stand in date columns alone: no text tells a day, a month, a season or a year', () => {
    const tells =
      /\b(19|20)\d\d\b|\d-\d\d?-|Januar|Februar|March|April|\bMay\b|June|July|August|Septem|Octo|Novem|Decem|Easter|Christmas|summer|autumn/iu;
    const texts = written.flatMap(({ rows }) => rows.flat().filter((cell) => isText(cell)));
    expect(texts.length).toBeGreaterThan(5000);
    expect(texts.filter((text) => tells.test(text))).toEqual([]);
  });

  it('give the answers of the written ones but for the days, and a sound ledger', () => {
    const questions = (today: Day, tables: readonly TableData[]): unknown => {
      const ranges = tables.map(({ headers, rows }) => [headers, ...rows]);
      const book = ask('BOOK', ...ranges);
      expect(String(book)).toMatch(/^book /u);
      return asIfOn(today, () => ({
        list: ['STOCKLIST', 'SUPPLIES', 'CALENDAR', 'PLANNOTES', 'CASHBYWEEK'].map((id) =>
          ask(id, book),
        ),
        designs: rowsOf(tables, 'Designs').map(([design]) =>
          ['CANMAKE', 'ONHAND', 'COSTPERBAR', 'CHECKS'].map((id) => ask(id, design, book)),
        ),
        materials: rowsOf(tables, 'Materials').map(([material]) =>
          ['REORDERPOINT', 'STOCKVALUE', 'SERVICECHECK'].map((id) => ask(id, material, book)),
        ),
        fairs: rowsOf(tables, 'Fairs')
          .slice(0, 3)
          .map(([fair]) => ask('FAIR', fair, book)),
      }));
    };
    fc.assert(
      fc.property(copyingDay, (today) => {
        const moved = tablesMovedTo(today, written);
        const days = movedBy(today);
        expect(questions(today, moved)).toEqual(
          later(questions(today - days, written) as Cell[], days),
        );
        const recognised = recogniseTables(moved.map(({ headers, rows }) => [headers, ...rows]));
        const book = recognised.ok ? readBook(recognised.value) : recognised;
        if (!book.ok) throw new Error(book.failure.sentence);
        expect(healthCheck(book.value, today, '').map(({ says }) => says)).toEqual([]);
      }),
      { numRuns: 4 },
    );
  });
});

const ask = (id: string, ...given: unknown[]): unknown => functions[id]?.(...given);

const isText = (cell: Cell): cell is string => typeof cell === 'string' && cell !== '';

const rowsOf = (tables: readonly TableData[], name: string): readonly (readonly Cell[])[] =>
  tables.find((table) => table.name === name)?.rows ?? [];

/** The same answers with the ISO dates of their texts so many days later, but for the date of the law. */
function later(answers: unknown, days: number): unknown {
  if (Array.isArray(answers)) return answers.map((each) => later(each, days));
  if (typeof answers === 'object' && answers !== null)
    return Object.fromEntries(
      Object.entries(answers).map(([name, each]) => [name, later(each, days)]),
    );
  if (typeof answers !== 'string') return answers;
  return answers.replace(/(?<!list of )\b\d{4}-\d\d-\d\d\b/gu, (iso) =>
    isoDate((readDay(iso) ?? 0) + days),
  );
}

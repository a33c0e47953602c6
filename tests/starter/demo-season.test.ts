import { beforeAll, describe, expect, it } from 'vitest';
import type { Book } from '../../src/domain/book/book.ts';
import { toCell } from '../../src/domain/kernel/exact.ts';
import { type Calendar, calendar } from '../../src/domain/schedule/calendar.ts';
import { supplies } from '../../src/domain/supplies/supplies.ts';
import { demoTables } from '../../src/starter/demo/demo-tables.ts';
import { demoDay } from '../../src/starter/demo/season.ts';
import { readTables, sure } from '../support/ledger-of.ts';

describe("the demo's season", () => {
  let book: Book;
  let season: Calendar;
  beforeAll(() => {
    book = readTables(
      Object.fromEntries(demoTables().map(({ name, headers, rows }) => [name, [headers, ...rows]])),
    );
    season = sure(calendar(book, demoDay));
  });

  const pours = () => season.entries.filter(({ task }) => task === 'pour');

  it('is poured in time, in as few batches as a day of 240 minutes allows', () => {
    expect(season.notices).toEqual([]);
    expect(season.proof).toEqual([]);
    const perDesign = new Map<string, number[]>();
    for (const { batch } of pours()) {
      const { name } = batch.design;
      perDesign.set(name, [...(perDesign.get(name) ?? []), batch.bars]);
    }
    // By hand, the most good bars of a day: 14 of the long ones (45 minutes of setup, 13 a bar, 15 started
    // for 14), 39 of Winter Beacon (30, 5, 42 for 39). No plan does with fewer batches.
    const most = (name: string): number => (name === 'Winter Beacon' ? 39 : 14);
    for (const [name, bars] of perDesign) {
      const total = bars.reduce((sum, some) => sum + some, 0);
      expect([name, bars.length]).toEqual([name, Math.ceil(total / most(name))]);
    }
    const setup = pours().reduce((sum, { batch }) => sum + toCell(batch.design.setupMinutes), 0);
    expect([pours().length, setup]).toEqual([13, 540]);
  });

  it('has no bar poured by itself', () => {
    for (const { batch } of pours()) expect(batch.bars).toBeGreaterThan(2);
  });

  it('has base enough for its own pours', () => {
    const { lines } = sure(supplies(book, demoDay));
    const bases = lines.filter(({ material }) => material.kind === 'base');
    expect(bases.map(({ material, net }) => [material.name, toCell(net)])).toEqual([
      ['Clear base', 0],
      ['White base', 0],
    ]);
  });
});

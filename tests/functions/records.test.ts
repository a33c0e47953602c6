import { describe, expect, it } from 'vitest';
import { asIfOn } from '../../functions/clock.ts';
import { functions } from '../../functions/index.ts';
import { records } from '../../functions/records/index.ts';
import type { FunctionRecord } from '../../functions/records/record.ts';
import { USUAL_SEASON } from '../../src/domain/forecast/forecast.ts';
import { USUAL_BARS } from '../../src/domain/recipe/plain-plan.ts';
import { fullWorkshop } from '../support/full-workshop.ts';
import { ranges, table, type Tables, withRows } from '../support/small-book.ts';

const ask = (id: string, ...given: unknown[]): unknown => functions[id]?.(...given);

// A plan that no test run is late for, and labels that can be written.
const planned: Tables = {
  ...withRows(withRows(fullWorkshop, 'Plan', ['Q1', 'Tide Pool', 6, '2199-12-20', '']), 'Fairs', [
    'Dock Fair',
    '2199-12-20',
    30,
    5,
    0,
    8,
  ]),
  Partners: table('Partner | Share %', ['Ada', 100]),
};
const tables = ranges({
  ...planned,
  Materials: (planned['Materials'] ?? []).map((row, at) => [...row, at === 0 ? 'INCI' : 'Aqua']),
});

const history = [3, 5, 4, 6, 7, 5].map((sold) => [sold]);
/** What the workshop's functions are asked, by the argument's name. */
const said: Readonly<Record<string, unknown>> = {
  ...{ book: ask('BOOK', ...tables), design: 'Tide Pool', bars: 12, mold: 'Tiles' },
  ...{ item: 'Clear base', material: 'Clear base', batch: 'T1', fair: 'Dock Fair', lot: 'C1' },
  ...{ lotOrBatch: 'T1', pattern: [['Teal', 'Foam']], history, periods: 3 },
  weights: [[27.1], [26.8], [27.4]],
  ...{ quantity: 1, cost: 4, marginPercent: 50, fixedCost: 80, price: 9, costPerUnit: 4 },
  ...{ servicePercent: 95, sdDailyUse: 5, leadDays: 10 },
  // Days on which nothing was bought or sold.
  ...{ from: 45_330, to: 45_337 },
  ...{ yearlyUse: 900, costPerOrder: 8, holdingPerUnit: 0.4 },
};

function givenTo(id: string, { takes }: FunctionRecord): unknown[] {
  if (id === 'BOOK') return tables;
  // Its "from" is a unit.
  if (id === 'AMOUNT') return [1, 'oz', 'g'];
  return Object.entries(takes)
    .filter(([, { optional }]) => optional !== true)
    .map(([name]) => {
      if (said[name] === undefined) throw new Error(`${id}: nothing to say for ${name}.`);
      return said[name];
    });
}

const all = Object.entries<FunctionRecord>(records);

describe.each(all)('%s', (id, record) => {
  const takes = Object.entries(record.takes);

  it('answers what its record says', () => {
    // 2024-03-05, a few days after the workshop's batch.
    const answer = asIfOn(45_356, () => ask(id, ...givenTo(id, record)));
    if (typeof record.answers === 'object') {
      const { columns } = record.answers;
      const rows = answer as unknown[][];
      expect(rows[0]).toEqual(columns);
      expect(rows.map((row) => row.length)).toEqual(rows.map(() => columns.length));
      return;
    }
    if (record.answers === 'text') expect(answer).toEqual(expect.any(String));
    else if (record.answers === 'number') expect(answer).toEqual(expect.any(Number));
    else expect(answer).toEqual([[expect.any(Number)], [expect.any(Number)], [expect.any(Number)]]);
  });

  it('rests on the book and the day that its arguments name', () => {
    const kinds = takes.map(([, { kind }]) => kind);
    const rests = new Set(record.restsOn);
    expect(rests.has('items') || rests.has('book')).toBe(kinds.includes('book'));
    if (kinds.includes('day')) expect(record.restsOn).toContain('day');
  });

  it('says in its help what a blank stands for', () => {
    for (const [name, { ifBlank, help }] of takes) {
      if (ifBlank !== undefined)
        expect(help, name).toMatch(
          new RegExp(`\\b${String(ifBlank).toUpperCase()} if blank|As for POUR\\.`, 'i'),
        );
    }
  });

  it('has what may be left out at the end', () => {
    const optional = takes.map(([, argument]) => argument.optional === true);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
  });
});

it('blanks stand for what the domain takes as usual', () => {
  const stands = (name: string): unknown[] => [
    ...new Set(all.flatMap(([, { takes }]) => takes[name]?.ifBlank ?? [])),
  ];
  expect(stands('bars')).toEqual([USUAL_BARS]);
  expect(stands('season')).toEqual([USUAL_SEASON]);
});

describe('where several arguments are wrong', () => {
  it.each([
    ['the book is named first', ['Tide Pool', 'a dozen', ''], /^book is blank/],
    ['then the first from the left', ['', 'a dozen', said['book']], /^design is blank/],
    ['and names are looked up last', ['Tidal', 'a dozen', said['book']], /^bars is "a dozen"/],
  ])('%s', (_, given, sentence) => {
    expect(() => ask('MELTSHEET', ...given)).toThrow(sentence);
  });
});

import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { records } from '../../functions/records/index.ts';
import { functionsMetadata } from '../../src/build/functions-metadata.ts';
import { demoTables } from '../../src/starter/demo/demo-tables.ts';
import { demoDay } from '../../src/starter/demo/season.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { dice, junk, neverCells, randomBook } from '../support/random-books.ts';
import { type CallFunction, CellError, loadOnce } from '../support/worksheet-functions.ts';
import { built } from './built.ts';
import { loadBuilt } from './built-functions.ts';

/**
 * Everything else is tested from source: this alone holds that the script which is shipped says the same, answer by
 * answer and sentence by sentence.
 */
const metadataText = functionsMetadata(records);
const { functions } = JSON.parse(metadataText) as {
  readonly functions: readonly {
    readonly id: string;
    readonly parameters: readonly { readonly name: string; readonly optional?: boolean }[];
  }[];
};

const SEED = 20_261_128;
const QUESTIONS_OF_EACH = 15;
/** What plays hundreds of years takes a second for each. */
const FEWER: Readonly<Record<string, number>> = { SERVICECHECK: 3 };
const RANDOM_BOOKS = 400;

const demo = demoTables();
const demoRanges = demo.map(({ headers, rows }) => [headers, ...rows]);

/** What stands in a column of the demo, each once. */
function column(table: string, header: string): Cell[] {
  const { headers = [], rows = [] } = demo.find(({ name }) => name === table) ?? {};
  const at = headers.indexOf(header);
  if (at < 0) throw new Error(`The demo's table ${table} has no column ${header}.`);
  return [...new Set(rows.map((row) => row[at] ?? ''))].filter((cell) => cell !== '');
}

const materials = column('Materials', 'Material');
const days = [demoDay - 200, demoDay - 30, demoDay, '2026-12-24', ''];
const history = column('LedgerLines', 'Quantity')
  .slice(0, 40)
  .map((cell) => [Math.abs(Number(cell))]);

/** What may be asked for under each name that an argument has; the book comes by itself. */
const asked: Readonly<Record<string, readonly unknown[]>> = {
  asOf: days,
  bars: [1, 7, 12, 60, ''],
  batch: column('Batches', 'Batch'),
  colour: [...column('Colours', 'Colour'), ''],
  cost: [1.85, 3],
  costPerOrder: [6],
  costPerUnit: [0.02, 2.4],
  design: column('Designs', 'Design'),
  densityOfSoap: [1.05, ''],
  densityOfWhatWasWeighed: [0.9982, ''],
  emptyG: [0, 12.5, ''],
  ending: [0.95, 0.5, ''],
  fair: column('Sales', 'Fair'),
  feeFixed: [0.3, ''],
  feePercent: [2.9, ''],
  fills: [1, 3, ''],
  fixedCost: [45],
  from: ['g', 'ml', 'drops', ...days],
  history: [history, history.slice(0, 9)],
  holdingPerUnit: [0.2],
  item: [...materials, ...column('LedgerLines', 'Material')],
  leadDays: [6, 0],
  lot: column('Lots', 'Lot'),
  lotOrBatch: [...column('Lots', 'Lot'), ...column('Batches', 'Batch')],
  marginPercent: [60, 0],
  material: [...materials, ''],
  meanDailyUse: [31.5, ''],
  mold: column('Molds', 'Mold'),
  pattern: [
    [
      ['Slate', 'Teal'],
      ['Teal', ''],
    ],
  ],
  periods: [1, 6],
  price: [7.5, 12],
  quantity: [1, 12.5, 1000],
  sdDailyUse: [4.25],
  sdLeadDays: [2, ''],
  season: [4, 12, ''],
  servicePercent: [90, 97.5],
  taxPercent: [8, ''],
  to: ['oz', 'kg', 'g', 'drops', ...days],
  weights: [[[27.1], [26.8], ['']], 25],
  useLeftovers: [true, false, ''],
  yearlyUse: [1200],
};

type Dice = (sides: number) => number;
const pick = <T>(roll: Dice, things: readonly T[]): T => things[roll(things.length)] as T;

/** What comes of a call, as text: another realm's lists are of a kind of their own. */
function outcome(call: CallFunction, id: string, given: readonly unknown[]): string {
  try {
    return JSON.stringify(call(id, ...given));
  } catch (problem) {
    if (!(problem instanceof CellError)) throw problem;
    return `${problem.code} ${problem.message}`;
  }
}

describe('dist/functions.js says what the sources say', () => {
  const shipped = loadBuilt();
  let source: CallFunction;
  let book: unknown;
  const differing: string[] = [];

  /** Asks both; how the sources answered. */
  function askBoth(id: string, given: readonly unknown[]): string {
    const [ours, theirs] = [source, shipped.call].map((call) => outcome(call, id, given));
    if (ours !== theirs)
      differing.push(`${id} ${JSON.stringify(given)}: ${String(theirs)}, not ${String(ours)}`);
    return String(ours);
  }

  beforeAll(async () => {
    // Midnight between the two would tell them apart.
    vi.useFakeTimers({ toFake: ['Date'], now: new Date(2026, 10, 28, 12) });
    source = await loadOnce();
    const [handle] = [source, shipped.call].map((call) => call('BOOK', ...demoRanges));
    book = handle;
  });
  afterAll(() => {
    vi.useRealTimers();
  });

  it('of the demo’s tables', () => {
    expect(askBoth('BOOK', demoRanges)).toMatch(/^"book [0-9a-f]{16}"$/u);
    expect(differing).toEqual([]);
  });

  it.each(functions.filter(({ id }) => id !== 'BOOK').map((entry) => [entry.id, entry] as const))(
    'of the demo, asked for %s',
    (id, { parameters }) => {
      const roll = dice(SEED);
      const answers = Array.from({ length: FEWER[id] ?? QUESTIONS_OF_EACH }, () =>
        askBoth(
          id,
          parameters.map(({ name, optional = false }) =>
            name === 'book' ? book : optional && roll(3) === 0 ? undefined : pick(roll, pool(name)),
          ),
        ),
      );
      expect(differing.splice(0)).toEqual([]);
      // The demo's maker works alone, so there is nobody to settle with.
      if (id === 'SETTLE') return;
      // Else it was never asked for anything that there is.
      expect(answers.filter((answer) => !answer.startsWith('#')).length, id).toBeGreaterThan(0);
    },
  );

  it.each(functions.map(({ id }) => id))('of what is no answer to give, asked for %s', (id) => {
    const roll = dice(SEED);
    askBoth(id, []);
    for (let call = 0; call < QUESTIONS_OF_EACH; call += 1) {
      const given = Array.from({ length: roll(6) }, () => anything(roll));
      askBoth(id, given);
    }
    expect(differing.splice(0)).toEqual([]);
  });

  it(`of ${RANDOM_BOOKS} random books, and of what each answers`, () => {
    const roll = dice(SEED);
    for (let number = 0; number < RANDOM_BOOKS; number += 1) {
      const tables = randomBook(roll);
      const handle = askBoth('BOOK', tables);
      if (!handle.startsWith('"book')) continue;
      const named = JSON.parse(handle) as string;
      for (const [id, ...given] of [
        ['COSTLINES', 'Tide Pool', named, 1 + roll(40), 45_400],
        ['WEIGHOUT', 'Tide Pool', 1 + roll(40), named],
        ['STOCKLIST', named, 45_400],
        ['CHECKS', 'Tide Pool', named],
      ])
        askBoth(String(id), given);
    }
    expect(differing.splice(0)).toEqual([]);
  });

  const anything = (roll: Dice): unknown => {
    const kind = roll(8);
    if (kind === 0) return pick(roll, neverCells);
    if (kind === 1) return [[pick(roll, junk), 1], ['x']];
    return kind < 5 ? book : pick(roll, junk);
  };

  function pool(name: string): readonly unknown[] {
    const values = asked[name] ?? [];
    if (values.length === 0) throw new Error(`Say in this test what may be asked for as ${name}.`);
    return values;
  }
});

it('dist/functions.json is what the sources tell of themselves', () => {
  expect(built('dist/functions.json')).toBe(metadataText);
});

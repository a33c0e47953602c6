import fc from 'fast-check';
import type { Cell } from '../../../src/workbook/port.ts';
import { isoDate, readDay } from '../../../src/domain/kernel/day.ts';
import { table, type Tables } from '../../support/small-book.ts';

/**
 * A ledger written by hand at random, and beside it the brute-force walk: every gram and piece is a
 * token that remembers which lots it holds. The walk knows nothing of layers, flows or graphs.
 */
export interface RandomLedger {
  readonly tables: Tables;
  readonly lots: readonly string[];
  /** Lots in each batch, by token. */
  readonly lotsIn: ReadonlyMap<string, ReadonlySet<string>>;
  /** Tokens that each batch took straight from each lot: `batch lot`. */
  readonly taken: ReadonlyMap<string, number>;
  /** Bars of each batch still on the shelf, and sold. */
  readonly barsLeft: ReadonlyMap<string, number>;
  readonly barsSold: ReadonlyMap<string, number>;
}

interface Token {
  readonly source: string;
  readonly came: number;
  readonly bestBefore: number;
  readonly lots: ReadonlySet<string>;
}

const materials = ['Clear base', 'Teal drops', 'Box'] as const;
const BARS = 'Tide Pool';
const shaped = ['Teal leftover', 'Amber leftover', 'Teal × Tiles', BARS] as const;
const items = [...materials, ...shaped];

/** One thing that happens; a day each. Numbers pick among what is there. */
type Step =
  | {
      readonly kind: 'buy';
      readonly item: number;
      readonly quantity: number;
      readonly good: number;
    }
  | {
      readonly kind: 'pour';
      readonly uses: readonly (readonly [item: number, quantity: number, named: number | null])[];
      readonly leaves: readonly (readonly [item: number, quantity: number, named: boolean])[];
      readonly undone: boolean;
    }
  | {
      readonly kind: 'out';
      readonly item: number;
      readonly quantity: number;
      readonly named: number | null;
      readonly reason: 'wasted' | 'counted' | 'sold';
    }
  | {
      readonly kind: 'found';
      readonly item: number;
      readonly quantity: number;
      readonly named: number | null;
    };

const quantity = fc.integer({ min: 1, max: 6 });
const named = fc.option(fc.nat(9), { nil: null });
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('buy' as const),
      item: fc.nat(materials.length - 1),
      quantity,
      good: fc.integer({ min: 0, max: 60 }),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.record({
      kind: fc.constant('pour' as const),
      uses: fc.array(fc.tuple(fc.nat(items.length - 1), quantity, named), { maxLength: 4 }),
      leaves: fc.array(fc.tuple(fc.nat(shaped.length - 1), quantity, fc.boolean()), {
        maxLength: 3,
      }),
      undone: fc.constantFrom(false, false, false, true),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('out' as const),
      item: fc.nat(items.length - 1),
      quantity,
      named,
      reason: fc.constantFrom('wasted' as const, 'counted' as const, 'sold' as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('found' as const),
      item: fc.nat(items.length - 1),
      quantity,
      named,
    }),
  },
);

export const randomLedger: fc.Arbitrary<RandomLedger> = fc
  .array(step, { minLength: 1, maxLength: 24 })
  .map((steps) => new Writer().write(steps));

const FIRST_DAY = readDay('2024-01-01') ?? 0;

class Writer {
  private readonly shelves = new Map<string, Token[]>(items.map((item) => [item, []]));
  private readonly lotRows: Cell[][] = [];
  private readonly moveRows: Cell[][] = [];
  private readonly batchRows: Cell[][] = [];
  private readonly dates = new Map<string, number>();
  private readonly lotsIn = new Map<string, Set<string>>();
  private readonly taken = new Map<string, number>();
  private readonly barsSold = new Map<string, number>();
  private day = FIRST_DAY;

  write(steps: readonly Step[]): RandomLedger {
    for (const step of steps) {
      this.day += 1;
      if (step.kind === 'buy') this.buy(step);
      else if (step.kind === 'pour') this.pour(step);
      else if (step.kind === 'out') this.out(step);
      else this.found(step);
    }
    const barsLeft = new Map<string, number>();
    for (const { source } of this.shelf(BARS)) add(barsLeft, source, 1);
    return {
      tables: this.tables(),
      lots: this.lotRows.map(([lot]) => String(lot)),
      lotsIn: this.lotsIn,
      taken: this.taken,
      barsLeft,
      barsSold: this.barsSold,
    };
  }

  private shelf(item: string): Token[] {
    return this.shelves.get(item) ?? [];
  }

  private buy({ item, quantity: count, good }: Extract<Step, { kind: 'buy' }>): void {
    const lot = `L${this.lotRows.length + 1}`;
    const material = materials[item] ?? '';
    const bestBefore = good === 0 ? Infinity : FIRST_DAY + good;
    this.dates.set(lot, bestBefore);
    this.lotRows.push([
      lot,
      material,
      isoDate(this.day),
      count,
      count,
      good === 0 ? '' : isoDate(bestBefore),
    ]);
    this.put(material, count, { source: lot, came: this.day, bestBefore, lots: new Set([lot]) });
  }

  private pour({ uses, leaves, undone }: Extract<Step, { kind: 'pour' }>): void {
    const batch = `B${this.batchRows.length + 1}`;
    this.batchRows.push([batch, isoDate(this.day), BARS, 1, '', undone ? 'undone' : 'posted']);
    const before = new Map([...this.shelves].map(([item, tokens]) => [item, [...tokens]]));
    const held = new Set<string>();
    const start = this.moveRows.length;
    for (const [at, wanted, which] of uses) {
      const item = items[at] ?? '';
      const { tokens, source } = this.take(item, wanted, which);
      if (tokens.length === 0) continue;
      this.move('used', item, -tokens.length, source, batch);
      for (const { lots } of tokens) for (const lot of lots) held.add(lot);
      if (undone || !isMaterial(item)) continue;
      for (const token of tokens) add(this.taken, `${batch} ${token.source}`, 1);
    }
    for (const [at, count, isNamed] of leaves) {
      const item = shaped[at] ?? '';
      const reason = item === BARS ? 'made' : item.endsWith('leftover') ? 'left over' : 'spare';
      this.move(reason, item, count, isNamed ? batch : '', batch);
      this.put(item, count, { source: batch, came: this.day, bestBefore: Infinity, lots: held });
    }
    if (undone) this.takeBack(start, before);
    else this.lotsIn.set(batch, held);
  }

  private takeBack(start: number, before: ReadonlyMap<string, Token[]>): void {
    for (const [entry, , , item, quantity, lot, , batch] of this.moveRows.slice(start)) {
      this.moveRows.push([
        `${String(entry)}.R`,
        isoDate(this.day),
        'reversed',
        String(item),
        -Number(quantity),
        String(lot),
        '',
        String(batch),
        '',
        String(entry),
      ]);
    }
    for (const [item, tokens] of before) this.shelves.set(item, tokens);
  }

  private out({
    item: at,
    quantity: wanted,
    named: which,
    reason,
  }: Extract<Step, { kind: 'out' }>): void {
    const item = items[at] ?? '';
    const { tokens, source } = this.take(item, wanted, which);
    if (tokens.length === 0) return;
    const why = reason === 'sold' && isMaterial(item) ? 'wasted' : reason;
    this.move(why, item, -tokens.length, source, '');
    if (item === BARS && reason === 'sold')
      for (const token of tokens) add(this.barsSold, token.source, 1);
  }

  /** A count finds more: of a lot or batch that is there, or of nobody knows which. */
  private found({
    item: at,
    quantity: count,
    named: which,
  }: Extract<Step, { kind: 'found' }>): void {
    const item = items[at] ?? '';
    const same = which === null ? undefined : pick(this.shelf(item), which);
    const entry = this.move('counted', item, count, same?.source ?? '', '');
    this.put(item, count, {
      source: same?.source ?? (isMaterial(item) ? '' : entry),
      came: this.day,
      bestBefore: same === undefined ? Infinity : (this.dates.get(same.source) ?? Infinity),
      lots: same?.lots ?? new Set(),
    });
  }

  private put(item: string, count: number, token: Token): void {
    for (let i = 0; i < count; i += 1) this.shelf(item).push(token);
  }

  /** Takes tokens of one named source, or the best before, oldest, first by name. */
  private take(item: string, wanted: number, which: number | null) {
    const shelf = this.shelf(item);
    shelf.sort(
      (a, b) =>
        compare(a.bestBefore, b.bestBefore) || a.came - b.came || (a.source < b.source ? -1 : 1),
    );
    const source = which === null ? '' : (pick(shelf, which)?.source ?? '');
    const chosen = shelf
      .filter((token) => source === '' || token.source === source)
      .slice(0, wanted);
    for (const token of chosen) shelf.splice(shelf.indexOf(token), 1);
    return { tokens: chosen, source };
  }

  private move(reason: string, item: string, count: number, lot: string, batch: string): string {
    const entry = `E${this.moveRows.length + 1}`;
    this.moveRows.push([entry, isoDate(this.day), reason, item, count, lot, '', batch, '', '']);
    return entry;
  }

  private tables(): Tables {
    return {
      Materials: table(
        'Material | Kind | Unit',
        ['Clear base', 'base', 'g'],
        ['Teal drops', 'colourant', 'g'],
        ['Box', 'packaging', 'each'],
      ),
      Lots: table('Lot | Material | Received | Quantity | Paid | Best before', ...this.lotRows),
      LedgerLines: table(
        'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
        ...this.moveRows,
      ),
      Molds: table('Mold | Makes | Cavities | Fill g', ['Tiles', 'tiles', 36, 25]),
      Colours: table(
        'Colour | Ingredient | Amount | Measure',
        ['Teal', 'Clear base', 9, 'g'],
        ['Teal', 'Teal drops', 1, 'g'],
        ['Amber', 'Clear base', 1, 'g'],
      ),
      Designs: table('Design | Bar mold', [BARS, '']),
      Batches: table('Batch | Poured | Design | Bars | Good | State', ...this.batchRows),
    };
  }
}

const isMaterial = (item: string): boolean => (materials as readonly string[]).includes(item);
const pick = (tokens: readonly Token[], which: number): Token | undefined =>
  tokens[which % Math.max(1, tokens.length)];
const compare = (a: number, b: number): number => (a === b ? 0 : a - b);

function add(counts: Map<string, number>, key: string, more: number): void {
  counts.set(key, (counts.get(key) ?? 0) + more);
}

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { everyItem, stockAccount } from '../../../src/domain/accounts/stock-account.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { table, type Tables } from '../../support/small-book.ts';

const FIRST = 45_292;
const DAYS = 12;

type Gone = 'sold' | 'given' | 'wasted' | 'counted';
interface Step {
  readonly day: number;
  readonly kind: 'made' | Gone;
  readonly bars: number;
  readonly cents: number;
}

const steps = fc
  .array(
    fc.record({
      day: fc.integer({ min: 0, max: DAYS - 1 }),
      kind: fc.constantFrom('made', 'sold', 'given', 'wasted', 'counted'),
      bars: fc.integer({ min: 1, max: 6 }),
      cents: fc.integer({ min: 0, max: 900 }),
    }),
    { maxLength: 25 },
  )
  .map((drawn) => [...drawn].sort((a, b) => a.day - b.day) as Step[]);

/** Each bar by itself, with its cost in cents, as anyone would keep them on a shelf: the first in goes first. */
function onAShelf(life: readonly Step[]) {
  const shelf: { readonly batch: string; readonly cents: number }[] = [];
  const lines: (readonly (string | number)[])[] = [];
  const gone: { readonly day: number; readonly kind: Gone; readonly cents: number }[] = [];
  const worth: number[] = [];
  for (let day = 0; day < DAYS; day += 1) {
    const today = life.map((step, at) => ({ ...step, at })).filter((step) => step.day === day);
    // Within a day what comes in counts first.
    const inTurn = [
      ...today.filter(({ kind }) => kind === 'made'),
      ...today.filter(({ kind }) => kind !== 'made'),
    ];
    for (const { kind, bars, cents, at } of inTurn) {
      const id = `E${String(at).padStart(2, '0')}`;
      if (kind === 'made') {
        lines.push([id, FIRST + day, 'made', 'Bar', bars, id, (bars * cents) / 100, '']);
        for (let bar = 0; bar < bars; bar += 1) shelf.push({ batch: id, cents });
        continue;
      }
      const taken = shelf.splice(0, bars);
      if (taken.length === 0) continue;
      lines.push([id, FIRST + day, kind, 'Bar', -taken.length, '', '', 'gift']);
      gone.push({ day, kind, cents: taken.reduce((total, bar) => total + bar.cents, 0) });
    }
    worth.push(shelf.reduce((total, bar) => total + bar.cents, 0));
  }
  return { lines, gone, worth };
}

const tablesOf = (
  lines: readonly (readonly (string | number)[])[],
  lots: readonly (readonly (string | number)[])[],
): Tables => ({
  Materials: table('Material | Kind | Unit', ['Goods', 'packaging', 'each']),
  Designs: table('Design', ['Bar']),
  Lots: table('Lot | Material | Received | Quantity | Paid', ...lots),
  LedgerLines: table('Entry | When | Reason | Material | Quantity | Lot | Value | Note', ...lines),
});

it('each figure is what bars kept one by one come to, and they add up to the cent', () => {
  fc.assert(
    fc.property(
      steps,
      fc.integer({ min: 0, max: DAYS - 1 }),
      fc.integer({ min: 0, max: DAYS - 1 }),
      (life, a, b) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const { lines, gone, worth } = onAShelf(life);
        // A batch costs what its materials did; here one lot pays for each.
        const made = lines.filter(([, , reason]) => reason === 'made');
        const lots = made.map(
          ([id, day, , , , , value]) =>
            [`L${String(id)}`, 'Goods', day, 1, value] as (string | number)[],
        );
        const used = made.map(
          ([id, day, , , , , value]) =>
            [`U${String(id)}`, day, 'used', 'Goods', -1, `L${String(id)}`, -Number(value), ''] as (
              string | number
            )[],
        );
        const book = readTables(tablesOf([...lines, ...used], lots));
        const account = sure(
          stockAccount(book, everyItem(book), { from: FIRST + from, to: FIRST + to }),
        );
        const within = gone.filter(({ day }) => day >= from && day <= to);
        const of = (kind: Gone): number =>
          within
            .filter((each) => each.kind === kind)
            .reduce((total, { cents }) => total + cents, 0);
        expect({
          opening: account.opening.times(100).toNumber(),
          closing: account.closing.times(100).toNumber(),
          costOfGoods: account.costOfGoods.times(100).toNumber(),
          given: account.given.times(100).toNumber(),
          wasted: account.wasted.times(100).toNumber(),
          countDifferences: account.countDifferences.times(100).toNumber(),
        }).toEqual({
          opening: worth[from - 1] ?? 0,
          closing: worth[to],
          costOfGoods: of('sold'),
          given: of('given'),
          wasted: of('wasted'),
          countDifferences: of('counted'),
        });
        expect(account.opening.plus(account.purchases).minus(account.closing).toString()).toBe(
          account.costOfGoods
            .plus(account.given)
            .plus(account.wasted)
            .plus(account.countDifferences)
            .toString(),
        );
      },
    ),
  );
});

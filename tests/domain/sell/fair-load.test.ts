import { describe, expect, it } from 'vitest';
import type { Book, Design, Fair } from '../../../src/domain/book/book.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { type FairLoad, fairLoad } from '../../../src/domain/sell/fair-load.ts';
import { dice } from '../../../src/domain/kernel/dice.ts';
import { demoTables } from '../../../src/starter/demo/demo-tables.ts';
import { barsAtFair } from '../../../src/starter/demo/sales.ts';
import { popularity } from '../../../src/starter/demo/season.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { type Tables, table, withCell, withSetting } from '../../support/small-book.ts';

/** Bars of bought blanks at 2.00, so that every figure can be worked out by hand. */
const stall: Tables = {
  Settings: table('Setting | Value', ['Currency', 'USD']),
  Materials: table('Material | Kind | Unit | Pack size | Pack price', [
    'Base',
    'base',
    'g',
    100,
    2,
  ]),
  Designs: table('Design | Price', ['Wave', 6], ['Gull', 6], ['Fog', 6]),
  Layers: table(
    'Design | Layer | Part | Item | Mold | Per bar | Per',
    ...['Wave', 'Gull', 'Fog'].map((design) => [design, '1', 'pour', 'Base', '', 100, 'g']),
  ),
  Plan: table('Plan line | Design | Bars | Ready by | Fair', [
    'P1',
    'Fog',
    5,
    '2026-05-30',
    'June',
  ]),
  Fairs: table(
    'Fair | Opens | Hours',
    ['March', '2026-03-01', 8],
    ['April', '2026-04-01', 4],
    ['May', '2026-05-01', 8],
    ['June', '2026-06-01', 8],
  ),
  Sales: table(
    'Sale | Sold on | Design | Bars | Price each | Fair',
    ['S1', '2026-03-01', 'Wave', 8, 6, 'March'],
    ['S2', '2026-04-01', 'Wave', 6, 6, 'April'],
    ['S3', '2026-05-01', 'Wave', 10, 6, 'May'],
    ['S4', '2026-05-01', 'Gull', 5, 6, 'may'],
    ['S5', '2026-05-02', 'Gull', 2, 6, ''],
  ),
  LedgerLines: table('Entry | When | Reason | Material | Quantity | Lot | Value', [
    'E1',
    '2026-05-20',
    'made',
    'Wave',
    4,
    'B1',
    8,
  ]),
};

const fairOf = (book: Book, name: string): Fair => {
  const fair = book.fairs.get(nameKey(name));
  if (fair === undefined) throw new Error(`There is no fair ${name}.`);
  return fair;
};
const loadOf = (tables: Tables, name = 'June'): FairLoad => {
  const book = readTables(tables);
  return sure(fairLoad(book, fairOf(book, name)));
};
const lineOf = (load: FairLoad, name: string) => {
  const line = load.lines.find(({ design }) => design.name === name);
  if (line === undefined) throw new Error(`${name} is not in the load.`);
  return line;
};

describe('fairLoad', () => {
  it('takes past fairs in proportion to their hours', () => {
    // 8, 6 × 8 ÷ 4 and 10: mean 10, sample variance 4, so Poisson.
    const { demand } = lineOf(loadOf(stall), 'Wave');
    expect([demand.mean, demand.variance]).toEqual([10, 10]);
  });

  it('brings what Cu ÷ (Cu + Co) asks for, and pours what is not there', () => {
    // Cu 6 − 2 = 4; Co 2 × 20 % = 0.4; ratio 0.909: Poisson 10 is 0.917 at 14, 0.864 at 13.
    const line = lineOf(loadOf(stall), 'Wave');
    expect(line.stakes.earned).toBeCloseTo(4, 12);
    expect(line.stakes.lost).toBeCloseTo(0.4, 12);
    expect([line.bring, line.have.toNumber(), line.pour]).toEqual([14, 4, 10]);
    expect(line.sellsOutPercent).toBeCloseTo(100 * (1 - 0.8644644226), 6);
  });

  it('goes by Leftover worth %, tax and card fees', () => {
    const worthless = lineOf(loadOf(withSetting(stall, 'Leftover worth %', 0)), 'Wave');
    // Ratio 4 ÷ 6: 0.667 is reached at 11 (0.697).
    expect(worthless.bring).toBe(11);
    const taxed = [
      ['Sales tax %', 20],
      ['Prices include tax', 'yes'],
      ['Card fee %', 5],
      ['Card fee fixed', 0.1],
    ].reduce<Tables>(
      (tables, [name, value]) => withSetting(tables, String(name), value ?? ''),
      stall,
    );
    // 6 ÷ 1.2 − 0.3 − 0.1 − 2.
    expect(lineOf(loadOf(taxed), 'Wave').stakes.earned).toBeCloseTo(2.6, 12);
  });

  it('says what it assumes of a design that was at one fair, and of one that was at none', () => {
    const load = loadOf(stall);
    // Gull was first sold in May: March and April say nothing of it. Fog is planned, and begins as Wave 8 and Gull 5 did.
    expect(lineOf(load, 'Gull').demand.mean).toBe(5);
    expect(lineOf(load, 'Fog').demand.mean).toBe(6.5);
    expect(load.assumed).toEqual([
      'Gull was at 1 fair only before June: its demand is taken from that one. How much demand varies is taken from its size alone.',
      'Fog was at no fair yet: it is taken to sell as the other designs did at their first.',
    ]);
  });

  it('says so where there are fewer than three fairs, or no hours', () => {
    expect(loadOf(stall, 'April').assumed[0]).toBe(
      'Only 1 fair before April has sales: three or more would say how much demand varies.',
    );
    const noHours = loadOf(withCell(stall, 'Fairs', 2, 'Hours', ''));
    expect(lineOf(noHours, 'Wave').demand.mean).toBe(8);
    expect(noHours.assumed[0]).toBe('April has no Hours in Fairs: taken to be as long as June.');
  });

  it('has nothing to say before any fair', () => {
    const book = readTables(stall);
    const load = fairLoad(book, fairOf(book, 'March'));
    expect(load.ok ? '' : load.failure.sentence).toBe(
      'No fair before March has sales, so nothing tells what is asked for. Record the sales of a fair, with its name, in Sales.',
    );
    expect(load.ok ? '' : load.failure.kind).toBe('not yet');
  });

  it('leaves out a design without a price, and says so', () => {
    const load = loadOf(withCell(stall, 'Designs', 1, 'Price', ''));
    expect(load.lines.map(({ design }) => design.name)).not.toContain('Wave');
    expect(load.assumed).toContain('Wave has no Price in Designs, so it is left out.');
  });
});

describe('on the demo’s own fairs', () => {
  const book = readTables(
    Object.fromEntries(demoTables().map(({ name, headers, rows }) => [name, [headers, ...rows]])),
  );
  const soldAt = ({ fair }: Fair, design?: Design): number =>
    book.sales
      .filter((sale) => nameKey(sale.fair) === nameKey(fair))
      .filter((sale) => design === undefined || sale.design === design)
      .reduce((total, { bars }) => total + bars, 0);
  const held = [...book.fairs.values()].filter((fair) => soldAt(fair) > 0);

  /** The book as if that fair came after all others, without its sales. */
  function heldOut(fair: Fair): FairLoad {
    const last = { ...fair, opens: Math.max(...held.map(({ opens }) => opens)) + 1 };
    const sales = book.sales.filter((sale) => nameKey(sale.fair) !== nameKey(fair.fair));
    const fairs = new Map(book.fairs).set(nameKey(fair.fair), last);
    return sure(fairLoad({ ...book, fairs, sales }, last));
  }

  // What was recorded can't be more than lay on the table, so what was asked for is drawn anew as the demo's year was.
  it('each held out in turn, it earns at least what bringing the average earns', () => {
    const roll = dice(20260612);
    const asked = ({ opens }: Fair, { name }: Design): number =>
      Math.max(
        0,
        Math.round(
          barsAtFair(opens) * (popularity[name] ?? 0) * (0.65 + 0.7 * roll()) + roll() - 0.5,
        ),
      );
    let [byRule, byAverage] = [0, 0];
    for (const fair of held) {
      for (const { design, bring, demand, stakes } of heldOut(fair).lines) {
        for (let time = 0; time < 200; time += 1) {
          const wanted = asked(fair, design);
          const earns = (number: number): number => {
            const sold = Math.min(wanted, number);
            return stakes.earned * sold - stakes.lost * (number - sold);
          };
          byRule += earns(bring);
          byAverage += earns(Math.round(demand.mean));
        }
      }
    }
    expect(held.length).toBeGreaterThanOrEqual(8);
    expect(byRule).toBeGreaterThanOrEqual(byAverage);
  });
});

import type { Material } from '../../domain/book/book.ts';
import { findDesign, itemOfMaterial } from '../../domain/book/find.ts';
import type { Day } from '../../domain/kernel/day.ts';
import { Exact, exact, toCell, zero } from '../../domain/kernel/exact.ts';
import { planMelts } from '../../domain/recipe/melt-plan.ts';
import { noLeftovers } from '../../domain/recipe/melt.ts';
import { materialNeeds } from '../../domain/recipe/material-needs.ts';
import { onHand } from '../../domain/stock/on-hand.ts';
import type { RowOfCells } from '../blocks/table-rows.ts';
import { type Diary, sound } from './diary.ts';
import { serial } from '../cells/serial.ts';
import { expectedBars, popularity } from './season.ts';

/** Looks this many days ahead before ordering, and buys for this many. */
const LOOK_AHEAD_DAYS = 40;
const BUY_FOR_DAYS = 75;

/** The invented maker has been too busy pouring to order since; so something is short in the demo. */
const LAST_ORDER_DAY: Day = serial('2026-11-02');

/** Orders under way and the numbers of lots, as the year goes by. */
export class Purchases {
  private readonly under: { readonly due: Day; readonly lot: RowOfCells<'lots'> }[] = [];
  private readonly usePerBar: ReadonlyMap<string, Exact>;
  private count = 0;
  private readonly diary: Diary;
  private readonly roll: () => number;

  constructor(diary: Diary, roll: () => number) {
    this.diary = diary;
    this.roll = roll;
    this.usePerBar = averageUsePerBar(diary);
  }

  /** Puts what has arrived by the day into Lots. */
  receive(day: Day): void {
    for (const order of this.under.filter(({ due }) => due === day)) {
      this.count += 1;
      const lot = `L-${String(this.count).padStart(3, '0')}`;
      this.diary.add('lots', { ...order.lot, lot });
    }
  }

  /** Orders each material that would not last; `wait` false is the first shopping, there at once. */
  order(day: Day, wait = true): void {
    if (day > LAST_ORDER_DAY) return;
    for (const material of this.diary.book().materials.values()) {
      const perBar = this.usePerBar.get(material.name) ?? zero;
      const stock = onHand(this.diary.book(), itemOfMaterial(material), day).plus(
        this.coming(material.name, day),
      );
      if (stock.gte(perBar.times(expectedBars(day, LOOK_AHEAD_DAYS)))) continue;
      const wanted = perBar.times(expectedBars(day, BUY_FOR_DAYS)).minus(stock);
      const leadDays = wait ? this.leadDays(material) : 0;
      this.under.push({ due: day + leadDays, lot: this.lotOf(material, wanted, day + leadDays) });
    }
  }

  private coming(material: string, day: Day): Exact {
    return this.under
      .filter(({ due, lot }) => due > day && lot.material === material)
      .reduce((total, { lot }) => total.plus(exact(Number(lot.quantity))), zero);
  }

  private leadDays({ leadDays, leadDaysSd }: Material): number {
    const late = (this.roll() + this.roll() - 1) * 2 * Number(leadDaysSd ?? zero);
    return Math.max(2, Math.round(Number(leadDays ?? zero) + late));
  }

  private lotOf(material: Material, wanted: Exact, received: Day): RowOfCells<'lots'> {
    const size = material.packSize ?? exact(1);
    const packs = Exact.max(wanted.div(size).ceil(), material.leastPacks ?? zero, 1);
    const price = (material.packPrice ?? zero).times(
      exact(0.94 + 0.1 * this.roll()).toDecimalPlaces(2),
    );
    const paid = price.toDecimalPlaces(2).times(packs);
    const keepsDays = keepsLess[material.name] ?? keeps[material.kind];
    return {
      material: material.name,
      received,
      quantity: toCell(packs.times(size)),
      paid: toCell(paid),
      freight: toCell(paid.times(exact(0.09)).plus(1.2).toDecimalPlaces(1)),
      bestBefore:
        keepsDays === undefined ? '' : received + keepsDays + Math.floor(this.roll() * 60),
      supplier: material.supplier,
    };
  }
}

/** Days that a fresh lot keeps, by kind of material. */
const keeps: Partial<Readonly<Record<Material['kind'], number>>> = {
  base: 700,
  colourant: 900,
  fragrance: 360,
  extra: 1000,
};

/** What was bought in the first days goes off soon: it shows as the earliest best before. */
const keepsLess: Readonly<Record<string, number>> = { Glycerin: 370 };

/** What an average bar takes of each material, by what buyers like. */
function averageUsePerBar(diary: Diary): Map<string, Exact> {
  const book = diary.book();
  const bars = 24;
  const use = new Map<string, Exact>();
  for (const [name, share] of Object.entries(popularity)) {
    const plan = sound(planMelts(sound(findDesign(book, name)), bars, book.settings, noLeftovers));
    for (const { material, quantity } of materialNeeds(plan)) {
      const before = use.get(material.name) ?? zero;
      use.set(material.name, before.plus(quantity.times(share).div(bars)));
    }
  }
  return use;
}

import { asStock } from '../kernel/measured.ts';
import type { Item, Soap } from '../book/book.ts';
import { itemOfLeftover, itemOfMaterial, itemOfSpare } from '../book/find.ts';
import { type Exact, notBelowZero, sum } from '../kernel/exact.ts';
import { ledgerDecimals, type StockUnit } from '../measure/units.ts';
import { inStock } from '../recipe/hand-amount.ts';
import type { MeltPlan } from '../recipe/melt-plan.ts';
import type { MaterialNeed, Melt, Shaping } from '../recipe/melt.ts';
import { measuredOut } from '../recipe/weigh-out.ts';
import { ADDED, lineKey, type Melting, type Pour } from './pour.ts';

/** One thing that went into the pour: out of stock, or out of another soap's melt. */
export interface Consumed {
  /** Undefined for soap of another colour of the same pour, which was never in stock. */
  readonly item: Item | undefined;
  readonly soap: Soap | undefined;
  /** In the item's stock unit; g for soap. */
  readonly quantity: Exact;
  /** Weight added to the melt. */
  readonly g: Exact;
}

/** What one melt of the pour really took and left. */
export interface PouredMelt {
  readonly melt: Melt;
  readonly consumed: readonly Consumed[];
  /** Spare pieces taken from stock and laid into bars. */
  readonly sparesLaid: readonly { readonly item: Item; readonly pieces: Exact }[];
  /** Spare pieces this pour left over. */
  readonly sparesMade: readonly {
    readonly item: Item;
    readonly shape: Shaping;
    readonly pieces: Exact;
  }[];
  readonly leftoverG: Exact;
}

/** A figure as the ledger keeps it. */
const asWritten = (figure: Exact, unit: StockUnit): Exact =>
  figure.toDecimalPlaces(ledgerDecimals(unit));

/** The plan with the maker's own figures in place of the planned ones where they gave any. */
export function pouredMelts(pour: Melting): PouredMelt[] {
  return pour.plan.melts.map((melt) => {
    const { soap, shapes } = melt;
    const leftover = itemOfLeftover(soap);
    return {
      melt,
      consumed: [...remelted(melt, pour), ...freshlyWeighed(melt, pour)],
      sparesLaid: shapes
        .map((shape) => ({ item: itemOfSpare(soap, shape.mold), pieces: shape.piecesFromSpares }))
        .filter(({ pieces }) => !pieces.isZero()),
      sparesMade: shapes.map((shape) => {
        const item = itemOfSpare(soap, shape.mold);
        return {
          item,
          shape,
          pieces: asWritten(pour.sparePieces.get(item.name) ?? shape.sparePieces, 'each'),
        };
      }),
      leftoverG: asWritten(pour.leftoverG.get(leftover.name) ?? melt.leftoverG, 'g'),
    };
  });
}

function remelted({ soap, remeltG }: Melt, pour: Melting): Consumed[] {
  const item = itemOfLeftover(soap);
  const g = asWritten(pour.weighed.get(lineKey(soap.name, item.name)) ?? remeltG, 'g');
  return g.isZero() ? [] : [{ item, soap: undefined, quantity: g, g }];
}

function freshlyWeighed({ soap, ingredients }: Melt, pour: Melting): Consumed[] {
  return ingredients.map((planned) => {
    const { ingredient } = planned.line;
    const name = ingredient.kind === 'soap' ? ingredient.soap.name : ingredient.material.name;
    const weighed = pour.weighed.get(lineKey(soap.name, name));
    const { g, quantity } = weighed === undefined ? planned : measuredOut(planned.line, weighed);
    return {
      item: ingredient.kind === 'material' ? itemOfMaterial(ingredient.material) : undefined,
      soap: ingredient.kind === 'soap' ? ingredient.soap : undefined,
      quantity: asWritten(
        quantity,
        ingredient.kind === 'material' ? ingredient.material.unit : 'g',
      ),
      g,
    };
  });
}

/**
 * Scent, paint and packaging for the bars started, in stock units; no packaging for those that were lost,
 * which stays in stock.
 */
export function addedFor(plan: MeltPlan, lost: number): readonly MaterialNeed[] {
  return plan.added.map(({ material, quantity }) => {
    const packed = plan.design.layers.flatMap((layer) =>
      layer.part === 'pack' && layer.material === material ? [layer.quantityPerBar] : [],
    );
    const unused = asStock(sum(packed).times(lost));
    return { material, quantity: asStock(notBelowZero(quantity.minus(unused))) };
  });
}

/** Scent, paint and packaging as really used, in stock units. */
export function addedMaterials(pour: Pour): { readonly item: Item; readonly quantity: Exact }[] {
  return addedFor(pour.plan, pour.lost ?? 0).map(({ material, quantity }) => {
    const weighed = pour.weighed.get(lineKey(ADDED, material.name));
    return {
      item: itemOfMaterial(material),
      quantity: asWritten(
        weighed === undefined ? quantity : inStock(weighed, material.unit),
        material.unit,
      ),
    };
  });
}

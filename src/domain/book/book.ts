import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import type { Liquid } from '../measure/convert.ts';
import type { StockUnit } from '../measure/units.ts';
import type { Ledger } from './ledger.ts';
import type { Settings } from './settings.ts';
import type { BarSet, Partner, SellingPlace } from './trade.ts';
import type { LayerPart, MaterialKind, MoldUse, MoveReason, Tender } from './words.ts';

/**
 * The typed book: what the tables say once every row has been read and every name found. Nothing
 * here can be half right; a book exists only when all its tables were in order.
 * Lots and moves keep the cell's own number (a ledger of years must index fast); `exact()` reads it.
 */
export interface Book {
  /** Names the content: same tables, same handle. */
  readonly handle: string;
  /** Names the content of each table by its kind in the same way. */
  readonly tableHandles: ReadonlyMap<string, string>;
  readonly settings: Settings;
  readonly materials: Named<Material>;
  readonly molds: Named<Mold>;
  /** Coloured soaps; use `findSoap` to find bases as well. */
  readonly colours: Named<Soap>;
  readonly designs: Named<Design>;
  readonly lots: readonly Lot[];
  readonly ledger: Ledger;
  readonly batches: Named<Batch>;
  readonly plan: readonly PlanLine[];
  readonly fairs: Named<Fair>;
  readonly sales: readonly Sale[];
  readonly places: Named<SellingPlace>;
  readonly sets: Named<BarSet>;
  readonly partners: Named<Partner>;
  /** What had to be assumed to read the tables, in order of their sentences. */
  readonly assumptions: readonly Assumption[];
}

/** Something read in the only way it could be, though the maker may mean it otherwise. */
export interface Assumption {
  readonly kind: 'density' | 'setting' | 'percent';
  /** Name of the material, design or setting. */
  readonly about: string;
  readonly sentence: string;
}

/** Things by `nameKey` of their name. */
export type Named<T> = ReadonlyMap<string, T>;

export interface Material extends Liquid {
  readonly kind: MaterialKind;
  readonly packSize: Exact | undefined;
  readonly packPrice: Exact | undefined;
  /** Its own, else its supplier's. */
  readonly leadDays: Exact | undefined;
  readonly leadDaysSd: Exact | undefined;
  readonly servicePercent: Exact | undefined;
  readonly leastPacks: Exact | undefined;
  /** Prices of larger orders, by ascending packs; none where empty. */
  readonly priceBreaks: readonly PriceBreak[];
  readonly maxPercent: Exact | undefined;
  readonly inci: string;
  readonly allergens: string;
  readonly supplier: string;
  /** How much of its weight stays in the finished bar: 0 to 1. It is bought, used and costed in full. */
  readonly staysShare: Exact;
  /** What that supplier asks beside the goods; undefined where Suppliers doesn't say. */
  readonly terms: SupplierTerms | undefined;
}

/** From so many packs in one order, all of its packs cost this. */
export interface PriceBreak {
  readonly fromPacks: number;
  readonly packPrice: Exact;
}

/** What an order at a supplier costs beside the goods. */
export interface SupplierTerms {
  readonly supplier: string;
  readonly carriage: Exact;
  /** Goods of one order from which there is no carriage; undefined where that is never. */
  readonly freeFrom: Exact | undefined;
  readonly leadDays: Exact | undefined;
}

/** Soap that can be melted and poured: a colour by its recipe, or a base just as it is. */
export interface Soap {
  readonly name: string;
  readonly lines: readonly RecipeLine[];
  /** Grams that the recipe as written makes. */
  readonly recipeG: Exact;
  /** Set where the soap is a base and not a colour. */
  readonly base: Material | undefined;
}

export type Ingredient =
  | { readonly kind: 'material'; readonly material: Material }
  | { readonly kind: 'soap'; readonly soap: Soap };

export interface RecipeLine {
  readonly ingredient: Ingredient;
  readonly amount: Exact;
  readonly measure: 'g' | 'ml' | 'drops' | 'parts';
  /** The amount in grams. */
  readonly g: Exact;
  /** Stock units of the ingredient in one gram of it. */
  readonly stockPerG: Exact;
}

export interface Mold {
  readonly name: string;
  readonly makes: MoldUse;
  readonly cavities: Exact;
  /** 0 where it is blank, which only a mold of bars may leave it. */
  readonly fillG: Exact;
  readonly scrapeG: Exact;
  readonly sections: Exact | undefined;
  readonly price: Exact | undefined;
  readonly lifeFills: Exact | undefined;
  readonly setMinutes: Exact | undefined;
  /** How many of its pieces break: 0 ≤ loss < 1. */
  readonly lossShare: Exact;
}

export interface Design {
  readonly name: string;
  readonly barMold: Mold | undefined;
  readonly labourMinutes: Exact;
  readonly setupMinutes: Exact;
  /** Good bars of those started: 0 < yield ≤ 1. */
  readonly yieldShare: Exact;
  readonly price: Exact | undefined;
  readonly netG: Exact | undefined;
  readonly handsOffHours: Exact;
  /** In the order of Layer. */
  readonly layers: readonly Layer[];
}

/** Pieces of a soap shaped in a mold, laid or set into the bar. */
export interface ShapedLayer {
  readonly part: Extract<LayerPart, 'tiles' | 'embed'>;
  readonly layer: string;
  readonly soap: Soap;
  readonly mold: Mold;
  readonly perBar: Exact;
}

/** Melted soap poured into the bar: the seal, the fill. */
export interface PouredLayer {
  readonly part: Extract<LayerPart, 'pour'>;
  readonly layer: string;
  readonly soap: Soap;
  readonly gPerBar: Exact;
}

/** A material put into or onto the bar. */
export interface AddedLayer {
  readonly part: Extract<LayerPart, 'scent' | 'paint' | 'pack'>;
  readonly layer: string;
  readonly material: Material;
  /** In the material's stock unit. */
  readonly quantityPerBar: Exact;
}

export type Layer = ShapedLayer | PouredLayer | AddedLayer;

export interface Lot {
  readonly lot: string;
  readonly material: Material;
  readonly received: Day;
  readonly quantity: number;
  readonly paid: number;
  readonly freight: number;
  readonly bestBefore: Day | undefined;
  readonly supplier: string;
  /** Name of a partner, or "" where nobody is named. */
  readonly paidBy: string;
}

/** Anything that stock is kept of. */
export type Item =
  | {
      readonly kind: 'material';
      readonly name: string;
      readonly unit: StockUnit;
      readonly material: Material;
    }
  | { readonly kind: 'leftover'; readonly name: string; readonly unit: 'g'; readonly soap: Soap }
  | {
      readonly kind: 'spare';
      readonly name: string;
      readonly unit: 'each';
      readonly soap: Soap;
      readonly mold: Mold;
    }
  | {
      /** Good bars on the maker's own shelf, or those not good enough for the full price. */
      readonly kind: 'bars' | 'seconds';
      readonly name: string;
      readonly unit: 'each';
      readonly design: Design;
    }
  | {
      /** Good bars that lie at a place and stay the maker's until they are sold. */
      readonly kind: 'placed';
      readonly name: string;
      readonly unit: 'each';
      readonly design: Design;
      readonly place: SellingPlace;
    };

export interface Move {
  readonly entry: string;
  readonly when: Day;
  readonly reason: MoveReason;
  readonly item: Item;
  /** Signed, in the item's unit. */
  readonly quantity: number;
  readonly lot: string;
  readonly value: number | undefined;
  readonly batch: string;
  readonly by: string;
  readonly note: string;
}

export interface Batch {
  readonly batch: string;
  readonly poured: Day;
  /** Undefined where pieces were shaped ahead: 0 bars, and no design. */
  readonly design: Design | undefined;
  readonly bars: number;
  readonly good: number | undefined;
  readonly seconds: number | undefined;
  readonly lost: number | undefined;
  readonly minutes: number | undefined;
  readonly materialCost: number | undefined;
  readonly costPerBar: number | undefined;
  readonly readyOn: Day | undefined;
  readonly state: string;
  readonly by: string;
  readonly note: string;
}

export interface PlanLine {
  readonly planLine: string;
  readonly design: Design;
  readonly bars: number;
  readonly readyBy: Day;
  readonly fair: string;
}

export interface Fair {
  readonly fair: string;
  readonly opens: Day;
  readonly stallFee: number;
  readonly travel: number;
  readonly otherCost: number;
  readonly hours: number | undefined;
}

export interface Sale {
  readonly sale: string;
  readonly soldOn: Day;
  readonly design: Design;
  /** Its seconds were sold, not good bars. */
  readonly isSecond: boolean;
  readonly bars: number;
  readonly priceEach: number;
  readonly fair: string;
  /** Undefined where blank. */
  readonly fees: number | undefined;
  readonly place: SellingPlace | undefined;
  readonly tender: Tender | undefined;
  /** Name of a partner, or "" where nobody is named. */
  readonly takenBy: string;
}

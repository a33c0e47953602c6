import type { Item, Lot, Move } from '../book/book.ts';
import { valueIn } from '../book/ledger.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact, sum, zero } from '../kernel/exact.ts';
import type { ItemHistory } from './item-history.ts';
import { layerOfLot, madeBy, PricedLayer, type StockLayer } from './layer.ts';
import { landedCost, landedUnitCost, ownPrice, packUnitCost } from './lot-cost.ts';
import { Pool } from './pool.ts';
import { type TakenFirst, takenFirst } from './taken-first.ts';
import { Shelf } from './shelf.ts';
import { LayersWorth } from './worth.ts';

/** Is told by how much the lines that it listens for change what the stock is worth. */
export interface Listener {
  /** Whether it listens for the line in a row of the ledger. */
  readonly hears: (row: number) => boolean;
  readonly changed: (row: number, by: Exact) => void;
}

/** An item's stock after its lots and live moves up to the end of a day, in order of time. */
export class Walk {
  readonly shelf = new Shelf();
  /** The moving average, where the valuation asks for it. */
  readonly pool: Pool | undefined;
  /** What the layers are worth as they come and go, where a move without a Value asks for it. */
  private readonly worth: LayersWorth | undefined;
  /** The moves that put stock in without a value, in order of time. */
  readonly unvalued: Move[] = [];
  readonly item: Item;
  private newest: StockLayer | undefined;
  private readonly listener: Listener | undefined;

  constructor(
    item: Item,
    history: ItemHistory,
    asOf: Day,
    isAverage: boolean,
    listener?: Listener,
  ) {
    this.item = item;
    this.listener = listener;
    const rows = history.liveRows(asOf);
    if (isAverage) this.pool = new Pool();
    else if (putsInUnvalued(history, rows)) this.worth = new LayersWorth();
    const isPlain = this.pool === undefined && this.worth === undefined;
    const inTurn = isPlain ? { rows, asWritten: NO_ROWS } : takenFirst(history, rows);
    this.follow(history, inTurn, Math.floor(asOf) + 1);
  }

  /** The latest cost known that stock came in at; what a count finds sets none. */
  get newestUnitCost(): Exact | undefined {
    return this.newest?.unitValue;
  }

  /** The lot, or for soap and bars the batch, that came last; "" where none did. */
  get newestLot(): string {
    return this.newest?.lot ?? '';
  }

  /** What is on the shelf, less what it owes at the latest cost; 0 for what has no cost. */
  get worthNow(): Exact {
    if (this.pool !== undefined) return this.pool.value;
    const { filled, owed } = this.shelf;
    const owedAt = this.newestUnitCost ?? packUnitCost(this.item) ?? zero;
    return worthOf(filled).minus(owed.times(owedAt));
  }

  private follow({ lots, ledger }: ItemHistory, { rows, asWritten }: TakenFirst, until: Day): void {
    const { whens, quantities, lots: lotNames, values } = ledger.columns;
    let nextLot = 0;
    const receiveBefore = (day: Day): void => {
      for (let lot = lots[nextLot]; lot !== undefined; lot = lots[nextLot]) {
        if (lot.received >= day) return;
        this.receive(lot);
        nextLot += 1;
      }
    };
    for (const row of rows) {
      receiveBefore(Math.floor(whens[row] as Day) + 1);
      const quantity = quantities[row] as number;
      const heard = this.listener?.hears(row) === true ? this.worthNow : undefined;
      // Most moves take something off the shelf; an object is made of the others only.
      if (quantity > 0) this.putIn(ledger.move(row));
      else {
        const written = asWritten.has(row) ? exact(values[row] as number).abs() : undefined;
        this.takeOut(-quantity, valueIn(lotNames, row), written);
      }
      if (heard !== undefined) this.listener?.changed(row, this.worthNow.minus(heard));
    }
    receiveBefore(until);
  }

  private receive(lot: Lot): void {
    const layer = layerOfLot(lot);
    this.put(layer, lot.quantity);
    this.pool?.putIn(lot.quantity, landedCost(lot), landedUnitCost(lot));
    this.newest = layer;
  }

  private putIn(move: Move): void {
    const sameLot = this.item.kind === 'material' ? this.shelf.named(move.lot)[0] : undefined;
    const layer = new PricedLayer(
      {
        lot: move.lot === '' ? madeBy(move, this.item) : move.lot,
        came: move.when,
        bestBefore: sameLot?.bestBefore,
        entry: move.entry,
      },
      sameLot === undefined ? this.priceOf(move) : () => sameLot.unitValue,
    );
    this.put(layer, move.quantity);
    const hasOwnPrice = sameLot === undefined && givenValue(move) !== undefined;
    if (!hasOwnPrice && layer.unitValue === undefined) this.unvalued.push(move);
    else if (this.item.kind !== 'material' && move.reason !== 'counted') this.newest = layer;
    if (this.pool === undefined) return;
    // More of a lot that is known joins all there is at the average, which stays as it is.
    const unitValue = (sameLot && this.unitCostBefore()) ?? layer.unitValue ?? zero;
    this.pool.putIn(move.quantity, exact(move.quantity).times(unitValue), unitValue);
  }

  private put(layer: StockLayer, quantity: number): void {
    if (this.worth === undefined) {
      this.shelf.putNumber(layer, quantity);
      return;
    }
    layer.quantity = exact(quantity);
    this.shelf.put(layer);
    this.worth.cameIn(quantity, layer);
  }

  /** What a unit is worth by the move's Value, or by what a unit cost just before. */
  private priceOf(move: Move): () => Exact | undefined {
    if (givenValue(move) !== undefined) return () => ownPrice(move);
    const guess = this.unitCostBefore();
    return () => guess;
  }

  private unitCostBefore(): Exact | undefined {
    const newest = this.newestUnitCost ?? packUnitCost(this.item);
    if (this.pool !== undefined) return this.pool.unitCost ?? newest;
    return this.worth?.unitCost(newest);
  }

  private takeOut(quantity: number, lot: string, written: Exact | undefined): void {
    if (this.worth === undefined) this.shelf.takeOff(quantity, lot);
    else this.worth.wentOut(quantity, this.shelf.take(exact(quantity), lot));
    this.pool?.takeOut(quantity, this.newestUnitCost ?? packUnitCost(this.item) ?? zero, written);
  }
}

/** What a line says it was worth; seconds are worth nothing unless it is said (contract §4). */
const givenValue = ({ value, reason, item }: Move): number | undefined =>
  value ?? (item.kind === 'seconds' && reason === 'made' ? 0 : undefined);

/** What layers are worth at their own costs; nothing for one without a cost. */
export const worthOf = (layers: readonly StockLayer[]): Exact =>
  sum(layers.map(({ quantity, unitValue }) => quantity.times(unitValue ?? zero)));

const NO_ROWS: ReadonlySet<number> = new Set();

function putsInUnvalued({ ledger }: ItemHistory, rows: Int32Array): boolean {
  const { quantities, values } = ledger.columns;
  return rows.some((row) => (quantities[row] as number) > 0 && Number.isNaN(values[row]));
}

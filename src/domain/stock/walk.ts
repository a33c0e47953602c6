import type { Item, Lot, Move } from '../book/book.ts';
import { valueIn } from '../book/ledger.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact, zero } from '../kernel/exact.ts';
import type { ItemHistory } from './item-history.ts';
import { layerOfLot, PricedLayer, type StockLayer } from './layer.ts';
import { landedCost, landedUnitCost, ownPrice, packUnitCost } from './lot-cost.ts';
import { Pool } from './pool.ts';
import { takenFirst } from './taken-first.ts';
import { Shelf } from './shelf.ts';

/** An item's stock after its lots and live moves up to the end of a day, in order of time. */
export class Walk {
  readonly shelf = new Shelf();
  /** The moving average; left out where neither the valuation nor a move without a Value asks for it. */
  readonly pool: Pool | undefined;
  /** The first entry that put stock in without a value. */
  unvalued: string | undefined;
  readonly item: Item;
  private newest: StockLayer | undefined;

  constructor(item: Item, history: ItemHistory, asOf: Day, asksForAverage: boolean) {
    this.item = item;
    const rows = history.liveRows(asOf);
    if (asksForAverage || putsInUnvalued(history, rows)) this.pool = new Pool();
    const inTurn = this.pool === undefined ? rows : takenFirst(history, rows);
    this.follow(history, inTurn, Math.floor(asOf) + 1);
  }

  /** The latest cost known that stock came in at. */
  get newestUnitCost(): Exact | undefined {
    return this.newest?.unitValue;
  }

  private follow({ lots, ledger }: ItemHistory, rows: Int32Array, until: Day): void {
    const { whens, quantities, lots: lotNames } = ledger.columns;
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
      // Most moves take something off the shelf; an object is made of the others only.
      if (quantity > 0) this.putIn(ledger.move(row));
      else this.takeOut(-quantity, valueIn(lotNames, row));
    }
    receiveBefore(until);
  }

  private receive(lot: Lot): void {
    const layer = layerOfLot(lot);
    this.shelf.putNumber(layer, lot.quantity);
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
    this.shelf.putNumber(layer, move.quantity);
    const hasOwnPrice = sameLot === undefined && move.value !== undefined;
    if (hasOwnPrice || layer.unitValue !== undefined) this.newest = layer;
    else this.unvalued ??= move.entry;
    if (this.pool === undefined) return;
    const { unitValue = zero } = layer;
    this.pool.putIn(move.quantity, exact(move.quantity).times(unitValue), unitValue);
  }

  /** What a unit is worth by the move's Value, or by what is known of the item so far. */
  private priceOf(move: Move): () => Exact | undefined {
    if (move.value !== undefined) return () => ownPrice(move);
    const guess = this.pool?.unitCost ?? this.newestUnitCost ?? packUnitCost(this.item);
    return () => guess;
  }

  private takeOut(quantity: number, lot: string): void {
    this.shelf.takeOff(quantity, lot);
    this.pool?.takeOut(quantity, this.newestUnitCost ?? packUnitCost(this.item) ?? zero);
  }
}

function putsInUnvalued({ ledger }: ItemHistory, rows: Int32Array): boolean {
  const { quantities, values } = ledger.columns;
  return rows.some((row) => (quantities[row] as number) > 0 && Number.isNaN(values[row]));
}

/** Soap and bars without a Lot are known by the batch that made them; material without one by no lot. */
function madeBy(move: Move, item: Item): string {
  if (item.kind === 'material') return '';
  return move.batch === '' || move.reason === 'counted' ? move.entry : move.batch;
}

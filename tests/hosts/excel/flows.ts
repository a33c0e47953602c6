import { findDesign, findItem, findMaterial } from '../../../src/domain/book/find.ts';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { postSales } from '../../../src/domain/ledger/post-sales.ts';
import { receiveDelivery } from '../../../src/domain/ledger/receive.ts';
import { postStocktake } from '../../../src/domain/ledger/stocktake.ts';
import { undoBatch } from '../../../src/domain/ledger/undo-batch.ts';
import { undoDelivery } from '../../../src/domain/ledger/undo-delivery.ts';
import {
  changeForBatch,
  changeForDelivery,
  changeForSales,
  changeForStocktake,
  changeForUndo,
  changeForUndoneLots,
} from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import type { Change } from '../../../src/workbook/port.ts';
import { applyChange } from '../../support/apply-change.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { tableData, type Tables, withRows, workshop } from '../../support/small-book.ts';

/** One thing a maker does in the pane, as the change that it writes. */
export interface Flow {
  readonly name: string;
  readonly tables: Tables;
  readonly change: Change;
  /** The tables once the change is written, worked out without any host. */
  readonly after: Tables;
}

export const TODAY = day('2024-03-10');
const pour = post(workshop, pourOf('Tide Pool', 12), TODAY);
if (pour === undefined) throw new Error('The pour was not posted.');
const book = readTables(pour.after);
const design = sure(findDesign(book, 'Tide Pool'));
const namesOf = (tables: Tables) => findTables(tableData(tables));

const flow = (name: string, tables: Tables, change: Change): Flow => ({
  name,
  tables,
  change,
  after: applyChange(tables, change),
});

/** A delivery of two lots. */
const delivery = sure(
  changeForDelivery(
    sure(
      receiveDelivery(book, {
        id: 'D1',
        received: TODAY,
        supplier: 'Cove Supply',
        freight: new Exact(4),
        shareFreightBy: 'value',
        lines: ['Clear base', 'Box'].map((name) => ({
          material: sure(findMaterial(book, name)),
          lot: '',
          quantity: new Exact(100),
          paid: new Exact(10),
          bestBefore: undefined,
        })),
      }),
    ),
    namesOf(workshop),
  ),
);
const blankLot = (workshop['Lots']?.[0] ?? []).map(() => '');

/** Everything that the pane writes, over the small workshop. */
export const FLOWS: readonly Flow[] = [
  flow('pour', workshop, sure(changeForBatch(pour.posting, namesOf(workshop)))),
  flow(
    'sell',
    pour.after,
    sure(
      changeForSales(
        sure(
          postSales(
            book,
            {
              id: 'S1',
              soldOn: TODAY,
              fair: 'Harbour Fair',
              lines: [{ design, bars: 2, priceEach: new Exact('9.5') }],
              fees: new Exact(1),
              by: '',
            },
            TODAY,
          ),
        ),
        namesOf(pour.after),
      ),
    ),
  ),
  flow('receive', workshop, delivery),
  flow('receive where a blank last row is filled', withRows(workshop, 'Lots', blankLot), delivery),
  flow(
    'count',
    pour.after,
    sure(
      changeForStocktake(
        sure(
          postStocktake(book, {
            id: 'K1',
            day: TODAY,
            counts: ['Box', 'Glycerin'].map((name) => ({
              item: sure(findItem(book, name)),
              counted: new Exact(30),
            })),
            by: '',
          }),
        ),
        namesOf(pour.after),
      ),
    ),
  ),
  flow(
    'undo',
    pour.after,
    sure(changeForUndo(sure(undoBatch(book, 'B1', TODAY, '')), namesOf(pour.after))),
  ),
  flow(
    'undo a delivery',
    workshop,
    sure(
      changeForUndoneLots(
        sure(undoDelivery(readTables(workshop), ['C1', 'G1', 'B1'])),
        namesOf(workshop),
      ),
    ),
  ),
];

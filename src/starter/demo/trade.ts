import type { RowOfCells } from '../blocks/table-rows.ts';
import { lanternQuay, tidePool, winterBeacon } from './designs.ts';

/** Where the invented workshop may sell; all names and terms are made up. */
export const demoPlaces: readonly RowOfCells<'places'>[] = [
  { place: 'Quayside stall', sellsAs: 'own stall' },
  {
    place: 'Letterbox orders',
    sellsAs: 'own shop',
    feePercent: 2.9,
    feeFixed: 0.3,
    postageEach: 1.15,
    leastBars: 2,
  },
  {
    place: 'The Net Loft',
    sellsAs: 'on consignment',
    commissionPercent: 35,
    leastBars: 12,
  },
  { place: 'Gull & Groyne', sellsAs: 'reseller', commissionPercent: 40, leastBars: 24 },
];

export const demoSets: readonly RowOfCells<'sets'>[] = [
  { set: 'Three lights', item: lanternQuay, perSet: 1, price: 36 },
  { set: 'Three lights', item: tidePool, perSet: 1 },
  { set: 'Three lights', item: winterBeacon, perSet: 2 },
  { set: 'Three lights', item: 'Label', perSet: 1 },
];

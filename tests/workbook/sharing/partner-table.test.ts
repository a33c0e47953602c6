import { expect, it } from 'vitest';
import { valueSheet } from '../../../src/workbook/sharing/partner-table.ts';

it('a copy without costs tells no place’s terms and nobody’s share', () => {
  const places = {
    name: 'Places',
    headers: ['Place', 'Sells as', 'Commission %', 'Fee %', 'Fee fixed', 'Postage each', 'Tax %'],
    rows: [['Net Loft', 'reseller', 35, 2, 0.3, 1.2, 20]],
  };
  expect(valueSheet('places', places, false)?.rows).toEqual([['Net Loft', 'reseller', 20]]);
  expect(valueSheet('places', places, true)?.rows).toEqual(places.rows);
  const partners = { name: 'Partners', headers: ['Partner', 'Share %'], rows: [['Ada', 100]] };
  expect(valueSheet('partners', partners, false)?.rows).toEqual([['Ada']]);
});

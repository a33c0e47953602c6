import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { readTables } from '../../support/ledger-of.ts';
import { table } from '../../support/small-book.ts';

const assumed = (row: readonly Cell[]): string[] =>
  readTables({ Settings: table('Setting | Value', row) }).assumptions.map(
    ({ sentence }) => sentence,
  );

describe('settings', () => {
  // Contract §2.
  it('take the contract’s defaults where blank or not there', () => {
    for (const rows of [
      [],
      [
        ['Currency', '', ''],
        ['Service %', ' ', ''],
      ],
    ]) {
      const { settings } = readTables({ Settings: table('Setting | Value | Note', ...rows) });
      expect({
        ...settings,
        ...Object.fromEntries(
          Object.entries(settings).map(([key, value]) => [
            key,
            typeof value === 'object' && 'toNumber' in value ? value.toNumber() : value,
          ]),
        ),
      }).toMatchObject({
        currency: 'USD',
        labourRatePerHour: 0,
        overheadPerBar: 0,
        valuation: 'FIFO',
        servicePercent: 95,
        scaleStepG: 1,
        salesTaxPercent: 0,
        pricesIncludeTax: false,
        cardFeePercent: 0,
        cardFeeFixed: 0,
        historyDays: 90,
        bufferDays: 3,
        skinStay: 'rinse-off',
      });
    }
  });

  it('are read in any case, with TRUE as good as yes', () => {
    const { settings } = readTables({
      Settings: table(
        'Setting | Value',
        ['CURRENCY', 'eur'],
        ['prices include tax', true],
        ['valuation', 'average'],
        ['Rest days', 'sun, Saturday'],
      ),
    });
    expect(settings).toMatchObject({
      currency: 'EUR',
      pricesIncludeTax: true,
      valuation: 'Average',
      restDays: [7, 6],
    });
  });

  it('of the maker’s own are let be, and said to be', () => {
    expect(assumed(['Favourite tea', 'Assam'])).toEqual([
      'The setting "Favourite tea" is not one that is used here.',
    ]);
  });

  it.each([
    ['Sales tax %', 0.08, ['Sales tax % is 0.08, less than 1 %: write 8 if 8 % is meant.']],
    ['Card fee %', 0.029, ['Card fee % is 0.029, less than 1 %: write 2.9 if 2.9 % is meant.']],
    ['Sales tax %', 0, []],
    ['Sales tax %', 1, []],
    ['Card fee %', 2.9, []],
  ])(
    '%s %d is taken as it is, and a share for a percent said to be one',
    (setting, value, says) => {
      expect(assumed([setting, value])).toEqual(says);
    },
  );
});

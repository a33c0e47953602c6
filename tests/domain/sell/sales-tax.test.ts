import { describe, expect, it } from 'vitest';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { taxInside, taxOnTop } from '../../../src/domain/sell/sales-tax.ts';

const exact = (value: string | number): Exact => new Exact(value);

describe('taxInside', () => {
  it.each([
    // The VAT fraction as a published tax-authority rule: REFERENCES T1, T2, T3, T4.
    ['120', '20', '20'],
    ['117.5', '17.5', '17.5'],
    ['115', '15', '15'],
    ['210', '5', '10'],
    ['9.99', '20', '1.67'],
    ['10', '8.25', '0.76'],
    ['5', '7', '0.33'],
    ['105', '5', '5'],
  ])('%s with %s %% inside holds %s of tax', (paid, percent, tax) => {
    const taxed = taxInside(exact(paid), exact(percent), 'USD');
    expect(taxed.tax.toString()).toBe(tax);
    expect(taxed.net.plus(taxed.tax).toString()).toBe(paid);
  });

  it('adds up for every cent from 0.01 to 100.00 at common rates', () => {
    for (const percent of [
      '5',
      '6',
      '7',
      '7.7',
      '8.25',
      '10',
      '12.5',
      '13',
      '17.5',
      '19',
      '20',
      '21',
      '25',
    ]) {
      for (let cents = 1; cents <= 10_000; cents += 1) {
        const paid = exact(cents).div(100);
        const { tax, net } = taxInside(paid, exact(percent), 'EUR');
        const halfCentOff = net.times(percent).div(100).minus(tax).abs();
        if (!tax.plus(net).eq(paid) || tax.decimalPlaces() > 2 || halfCentOff.gt('0.0063')) {
          expect.fail(
            `${paid.toString()} at ${percent} %: tax ${tax.toString()}, net ${net.toString()}`,
          );
        }
      }
    }
  });

  it.each([
    // Currencies of 0 and 3 digits (ISO 4217): REFERENCES R12.
    ['JPY', '1100', '10', '100'],
    ['KWD', '10.5', '5', '0.5'],
    ['KWD', '1', '7', '0.065'],
  ])('rounds in %s to its smallest unit', (currency, paid, percent, tax) => {
    expect(taxInside(exact(paid), exact(percent), currency).tax.toString()).toBe(tax);
  });
});

describe('taxOnTop', () => {
  it.each([
    // REFERENCES T5, T6.
    ['4.69', '5', '0.23'],
    ['3.33', '7', '0.23'],
    ['9.99', '7', '0.7'],
  ])('%s with %s %% on top pays %s of tax', (net, percent, tax) => {
    const taxed = taxOnTop(exact(net), exact(percent), 'USD');
    expect(taxed.tax.toString()).toBe(tax);
    expect(taxed.paid.toString()).toBe(exact(net).plus(tax).toString());
  });
});

import { cell } from '../cells/answer-cells.ts';
import { at, cellOn, type Formula } from '../cells/formula.ts';
import { numberSet, wordSet } from '../cells/look-up.ts';
import { choose, given, minus, over, plusCell, times, value } from '../cells/native.ts';
import { pricingName } from '../cells/names.ts';
import type { StarterCell } from '../cells/sheet.ts';

/** Where the Pricing sheet shows what Setup says of tax and fees. */
const TOP = 3;
const NAMES = 5;
const VALUES = 7;
const rows = {
  tax: TOP,
  include: TOP + 1,
  fee: TOP + 2,
  feeFixed: TOP + 3,
  taxInside: TOP + 4,
  fees: TOP + 5,
};

/**
 * Tax and fees as they bear on the price written on a tag. Where prices include the tax, it is inside
 * the tag's price; else it comes on top, and the card fee is charged on it too.
 */
export function sellingCells(): StarterCell[] {
  const [tax, include, fee] = [
    at(rows.tax, VALUES),
    at(rows.include, VALUES),
    at(rows.fee, VALUES),
  ];
  const withTax = plusCell(value(1), over(tax, value(100)));
  const lines: readonly (readonly [number, string, Formula, 'percent' | 'money' | 'text'])[] = [
    [rows.tax, 'Sales tax %', numberSet('salesTaxPercent'), 'percent'],
    [rows.include, 'Prices include tax', wordSet('pricesIncludeTax'), 'text'],
    [rows.fee, 'Card fee %', numberSet('cardFeePercent'), 'percent'],
    [rows.feeFixed, 'Card fee fixed', numberSet('cardFeeFixed'), 'money'],
    [
      rows.taxInside,
      'Tax inside a tag price %',
      choose([include, '=', value('yes')], tax, value(0)),
      'percent',
    ],
    [
      rows.fees,
      'Card fee of a tag price %',
      choose([include, '=', value('yes')], fee, given([tax, fee], times(fee, withTax))),
      'percent',
    ],
  ];
  return [
    cell(TOP - 1, NAMES, 'From Setup', 'heading'),
    cell(TOP - 1, NAMES + 1, '', 'heading'),
    cell(TOP - 1, VALUES, '', 'heading'),
    ...lines.flatMap(([row, name, holds, format]) => [
      cell(row, NAMES, name, 'label'),
      cell(row, VALUES, holds, 'answer', format),
    ]),
  ];
}

/** The same cells for the formulas of another sheet. */
export const selling = {
  taxInside: cellOn(pricingName, rows.taxInside, VALUES),
  fees: cellOn(pricingName, rows.fees, VALUES),
  feeFixed: cellOn(pricingName, rows.feeFixed, VALUES),
} as const;

/** What a tag's price leaves once the tax in it is gone. */
export const netOfTax = (price: Formula): Formula =>
  over(price, plusCell(value(1), over(selling.taxInside, value(100))));

/** What a tag's price leaves after tax and the fees of one payment. */
export const leftOf = (price: Formula): Formula =>
  minus(minus(netOfTax(price), over(times(price, selling.fees), value(100))), selling.feeFixed);

import { type TableKind, tables } from '../../workbook/schema.ts';
import type { SheetGroup } from './sheet.ts';

/** The sheet that each table stands on, in the order of the tabs; no table has the name of its sheet. */
export const tableSheets: readonly {
  readonly kind: TableKind;
  readonly sheet: string;
  readonly group: SheetGroup;
  readonly note: string;
}[] = [
  {
    kind: 'materials',
    sheet: 'Shelf',
    group: 'yours',
    note: 'Everything you buy. A blank Service % takes the one of Setup.',
  },
  {
    kind: 'lots',
    sheet: 'Purchases',
    group: 'yours',
    note: 'One line for each purchase received.',
  },
  {
    kind: 'molds',
    sheet: 'Mold shelf',
    group: 'yours',
    note: 'One fill of a tile or embed mold fills all of its cavities.',
  },
  {
    kind: 'colours',
    sheet: 'Colour recipes',
    group: 'yours',
    note: 'One line for each ingredient. An ingredient that is a colour makes a blend.',
  },
  { kind: 'designs', sheet: 'Bar designs', group: 'yours', note: 'One line for each kind of bar.' },
  {
    kind: 'layers',
    sheet: 'Bar layers',
    group: 'yours',
    note: 'What one bar is made of, in the order you make it.',
  },
  { kind: 'plan', sheet: 'Season plan', group: 'yours', note: 'Bars you mean to make.' },
  { kind: 'fairs', sheet: 'Fair dates', group: 'yours', note: 'Fairs and markets.' },
  {
    kind: 'sales',
    sheet: 'Takings',
    group: 'yours',
    note: 'Bars sold; each sale also takes its bars out in Ledger.',
  },
  {
    kind: 'suppliers',
    sheet: 'Supplier terms',
    group: 'yours',
    note: 'What an order costs beside the goods. May stay blank.',
  },
  {
    kind: 'priceBreaks',
    sheet: 'Pack discounts',
    group: 'yours',
    note: 'Prices of larger orders, for all packs of the order. May stay blank.',
  },
  {
    kind: 'places',
    sheet: 'Outlets',
    group: 'yours',
    note: 'Where you sell, and what each place takes. Stock there is kept as "design @ place".',
  },
  {
    kind: 'sets',
    sheet: 'Gift sets',
    group: 'yours',
    note: 'Bars sold together: one line for each design and each box, the price on one of them.',
  },
  {
    kind: 'partners',
    sheet: 'Who shares',
    group: 'yours',
    note: 'Only where several share: their parts add up to 100.',
  },
  {
    kind: 'settings',
    sheet: 'Setup',
    group: 'yours',
    note: 'Choices that hold for the whole workbook; a blank takes the default.',
  },
  {
    kind: 'moves',
    sheet: 'Ledger',
    group: 'ledger',
    note: 'Every change of stock but purchases. The pane adds lines; to correct one, undo or count, never edit.',
  },
  {
    kind: 'batches',
    sheet: 'Pours',
    group: 'ledger',
    note: 'One line for each pour, added by the pane.',
  },
];

/** What a sheet is for, under the name that messages call its table by. */
export const noteOf = ({ kind, note }: (typeof tableSheets)[number]): string =>
  `Table ${tables[kind].name}. ${note}`;

export const bookName = 'Book';
export const pricingName = 'Pricing';
export const seasonName = 'Season';
export const whatIfName = 'What if';
export const listsSheet = 'Lists';
export const functionAnswersSheet = 'Function answers';

/** The cell of the What if sheet that reads every table, the plan with more bars in Plan's place. */
export const otherBookPlace = { row: 4, column: 13 } as const;

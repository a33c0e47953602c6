import { layerParts, materialKinds, moldUses, moveReasons, tenders } from '../domain/book/words.ts';
import { stockUnits } from '../domain/measure/units.ts';
import {
  anything,
  choice,
  type Column,
  date,
  longText,
  money,
  number,
  required,
  requiredHeader,
  text,
} from './column.ts';
import { priceBreakColumns, supplierColumns } from './supplier-tables.ts';
import { table, type TableSpec } from './table.ts';
import { tradeTables } from './trade-tables.ts';

/**
 * The tables of the workbook: the single truth for reading, writing, the starter workbook and the
 * documentation. Functions find a table by its required headers, never by position or name.
 */

/** A row as read: its cells by column, and where it stands (1 is the first row under the headers). */
export type RowOf<S> =
  S extends TableSpec<infer C>
    ? { readonly row: number } & {
        readonly [K in keyof C]: C[K] extends Column<infer T> ? T : never;
      }
    : never;

const recipeMeasures = ['g', 'ml', 'drops', 'parts'] as const;
const layerMeasures = ['each', 'g', 'ml', 'drops', '%'] as const;

export const tables = {
  settings: table('Settings', 'Choices that hold for the whole workbook.', {
    setting: required(text('Setting', 'Name of the setting.')),
    value: requiredHeader(anything('Value', 'Its value; blank takes the default.')),
    note: longText('Note', 'Anything you like.'),
  }),
  materials: table('Materials', 'Everything you buy to make and pack a bar.', {
    material: required(text('Material', 'A name of your own, each once.')),
    kind: required(choice('Kind', materialKinds, 'What it is.')),
    unit: required(choice('Unit', stockUnits, 'What you count it in, as you buy it.')),
    densityGPerMl: number('Density g/ml', { above: 0, max: 25 }, 'Grams in one millilitre.'),
    dropsPerMl: number(
      'Drops per ml',
      { above: 0, max: 1000 },
      'Count 50 drops into a spoon to find yours; 20 is assumed.',
    ),
    packSize: number('Pack size', { above: 0 }, 'How much one pack holds, in the unit.'),
    packPrice: money('Pack price', 'What one pack costs now.'),
    leadDays: number('Lead days', { min: 0, max: 3650 }, 'Days from ordering to having it.'),
    leadDaysSd: number(
      'Lead days SD',
      { min: 0, max: 3650, zero: 'as blank' },
      'How much that varies (standard deviation).',
    ),
    servicePercent: number(
      'Service %',
      { min: 1, below: 100, format: 'percent' },
      'How often stock should last until the order comes.',
    ),
    leastPacks: number(
      'Least packs',
      { min: 0, whole: true, zero: 'as blank' },
      'Fewest packs the supplier sells.',
    ),
    maxPercent: number(
      'Max %',
      { min: 0, max: 100, format: 'percent' },
      "Most of it allowed in the finished bar by weight, as the supplier's document says.",
    ),
    inci: longText('INCI', 'Label name, or several with percents: Aqua 40; Glycerin 30.'),
    allergens: longText('Allergens', 'Share of this material: Eugenol 80; Linalool 0.3.'),
    supplier: text('Supplier', 'Who you buy it from.'),
    staysPercent: number(
      'Stays %',
      { min: 0, max: 100, format: 'percent' },
      'How much of its weight stays in the finished bar: 100 if blank, 0 for alcohol that dries off.',
    ),
  }),
  lots: table('Lots', 'One line for each purchase received.', {
    lot: required(text('Lot', 'A number of your own, each once.')),
    material: required(text('Material', 'As in Materials.')),
    received: required(date('Received', 'Day it came.')),
    quantity: required(number('Quantity', { above: 0 }, "How much came, in the material's unit.")),
    paid: required(money('Paid', 'What you paid for it, without freight.')),
    freight: money('Freight', 'Its share of carriage and duty.', 'as blank'),
    bestBefore: date('Best before', 'Used first when earliest.'),
    supplier: text('Supplier', 'Who it came from.'),
    paidBy: text('Paid by', 'As in Partners.'),
  }),
  moves: table('LedgerLines', 'The ledger: lines are added, never changed.', {
    // The batch's id with what postBatch and undoBatch add to it.
    entry: required(text('Entry', 'Unique id of the line.', 300)),
    when: required(date('When', 'Day it happened.')),
    reason: required(choice('Reason', moveReasons, 'Why stock moved.')),
    material: required(
      // Two names and the sign between them.
      text('Material', 'A material, "Teal leftover", "Teal × Small tiles" or a design.', 600),
    ),
    quantity: required(number('Quantity', {}, 'Minus takes away, plus puts back.')),
    lot: text('Lot', 'The lot it came from, or the batch for soap and bars.'),
    value: number(
      'Value',
      { format: 'money' },
      'What it was worth, with the sign of the quantity.',
    ),
    batch: text('Batch', 'The batch it belongs to.'),
    by: text('By', 'Who wrote it.'),
    note: longText('Note', 'For a reversal, the Entry it takes back.'),
  }),
  molds: table('Molds', 'Tile, embed and bar molds.', {
    mold: required(text('Mold', 'A name of your own, each once.')),
    makes: required(choice('Makes', moldUses, 'What comes out of it.')),
    cavities: required(number('Cavities', { above: 0, whole: true }, 'Pieces from one fill.')),
    fillG: requiredHeader(
      number('Fill g', { above: 0 }, 'Grams of soap in one fill of all cavities.'),
    ),
    scrapeG: number(
      'Scrape g',
      { min: 0, zero: 'as blank' },
      'Grams scraped off each fill; it comes back as leftover.',
    ),
    sections: number('Sections', { above: 0, whole: true }, 'How many of it you own.'),
    price: money('Price', 'What the mold cost.', 'as blank'),
    lifeFills: number('Life fills', { above: 0 }, 'Fills it lasts.'),
    setMinutes: number('Set minutes', { above: 0 }, 'Minutes until it can be emptied.'),
    lossPercent: number(
      'Loss %',
      { min: 0, below: 100, format: 'percent', zero: 'as blank' },
      'How many of its tiles or embeds break; that many more are shaped.',
    ),
  }),
  colours: table('Colours', 'Recipes: one line for each ingredient of a colour.', {
    colour: required(text('Colour', 'A name of your own.')),
    ingredient: required(text('Ingredient', 'A material, or another colour for a blend.')),
    amount: required(number('Amount', { above: 0 }, 'How much of it in the recipe.')),
    measure: required(choice('Measure', recipeMeasures, 'g, ml, drops, or parts by weight.')),
  }),
  designs: table('Designs', 'One line for each kind of bar.', {
    design: required(text('Design', 'A name of your own, each once.')),
    barMold: text('Bar mold', 'The mold the bar is filled in.'),
    labourMinutes: number(
      'Labour minutes',
      { min: 0, zero: 'as blank' },
      'Minutes of work for each bar.',
    ),
    setupMinutes: number(
      'Setup minutes',
      { min: 0, zero: 'as blank' },
      'Minutes of work for each batch.',
    ),
    yieldPercent: number(
      'Yield %',
      { min: 1, max: 100, format: 'percent' },
      'Good bars of those started; blank is 100.',
    ),
    price: money('Price', 'What you ask for one bar.', 'as blank'),
    netG: number('Net g', { above: 0 }, 'Net weight on the label.'),
    handsOffHours: number(
      'Hands-off hours',
      { min: 0, max: 87_600, zero: 'as blank' },
      'Hours from the pour until it can be sold.',
    ),
  }),
  layers: table('Layers', 'What one bar is made of.', {
    design: required(text('Design', 'As in Designs.')),
    // Who numbers layers may begin with 0.
    layer: required({
      ...text('Layer', 'Its number or name, in the order you make it.'),
      zero: 'meant',
    }),
    part: required(choice('Part', layerParts, 'How it gets into the bar.')),
    item: required(text('Item', 'A colour, a base or a material.')),
    mold: text('Mold', 'The tile or embed mold.'),
    perBar: required(number('Per bar', { above: 0 }, 'How much in one bar.')),
    per: required(choice('Per', layerMeasures, 'What that is counted in.')),
  }),
  batches: table('Batches', 'One line for each pour.', {
    batch: required(text('Batch', 'Unique id.')),
    poured: required(date('Poured', 'Day of the pour.')),
    design: requiredHeader(text('Design', 'As in Designs; blank where pieces were shaped ahead.')),
    bars: requiredHeader(
      number(
        'Bars',
        { min: 0, whole: true, zero: 'as blank' },
        'Bars started; 0 where pieces were shaped ahead.',
      ),
    ),
    good: number('Good', { min: 0, whole: true }, 'Good bars.'),
    seconds: number(
      'Seconds',
      { min: 0, whole: true },
      'Bars not good enough to sell at full price.',
    ),
    lost: number('Lost', { min: 0, whole: true }, 'Bars started that came to nothing.'),
    minutes: number('Minutes', { min: 0 }, 'Minutes it really took.'),
    materialCost: number(
      'Material cost',
      { format: 'money' },
      'Materials that stayed in the bars.',
    ),
    costPerBar: number('Cost per bar', { format: 'money' }, 'Full cost of one good bar.'),
    readyOn: date('Ready on', 'First day it can be sold.'),
    state: text('State', 'recorded, or undone.'),
    by: text('By', 'Who poured it.'),
    note: longText('Note', 'Anything you like.'),
  }),
  plan: table('Plan', 'Bars you mean to make.', {
    planLine: required(text('Plan line', 'Unique id.')),
    design: required(text('Design', 'As in Designs.')),
    bars: required(number('Bars', { above: 0, whole: true }, 'Good bars wanted.')),
    readyBy: required(date('Ready by', 'Day they must be ready.')),
    fair: text('Fair', 'As in Fairs.'),
  }),
  fairs: table('Fairs', 'Fairs and markets.', {
    fair: required(text('Fair', 'A name of your own, each once.')),
    opens: required(date('Opens', 'First day.')),
    stallFee: money('Stall fee', 'What the stall costs.', 'as blank'),
    travel: money('Travel', 'Getting there and back.', 'as blank'),
    otherCost: money('Other cost', 'Anything else for this fair.', 'as blank'),
    hours: number(
      'Hours',
      { min: 0, zero: 'as blank' },
      'Your hours at the stall and on the road.',
    ),
  }),
  sales: table('Sales', 'Bars sold.', {
    sale: required(text('Sale', 'Unique id.')),
    soldOn: required(date('Sold on', 'Day of the sale.')),
    design: required(text('Design', 'As in Designs, or its "seconds".')),
    bars: required(
      number(
        'Bars',
        { whole: true, zero: 'never meant' },
        'How many; negative only in a line that takes a sale back.',
      ),
    ),
    priceEach: required(
      money('Price each', 'What the buyer paid for one, as the Settings say of tax.'),
    ),
    fair: text('Fair', 'As in Fairs.'),
    fees: number('Fees', { format: 'money', zero: 'as blank' }, 'Card or market fees on it.'),
    place: text('Place', 'As in Places.'),
    tender: choice(
      'Tender',
      tenders,
      'How it was paid. Blank Fees go by Settings where it is card.',
    ),
    takenBy: text('Taken by', 'Who took the money, as in Partners.'),
  }),
  suppliers: table(
    'Suppliers',
    'What an order at each supplier costs beside the goods.',
    supplierColumns,
  ),
  priceBreaks: table(
    'PriceBreaks',
    'Pack prices that fall with the packs of an order.',
    priceBreakColumns,
  ),
  ...tradeTables,
} as const;

export type TableKind = keyof typeof tables;
export const tableKinds = Object.keys(tables) as readonly TableKind[];

/** What is to be typed before the first pour, in an order in which each line finds what it names. */
export const firstTables: readonly TableKind[] = [
  'materials',
  'lots',
  'molds',
  'colours',
  'designs',
  'layers',
];

/** Columns whose ids must be unique in their table, in any case of letters. */
export const uniqueColumn: Partial<Readonly<Record<TableKind, string>>> = {
  settings: 'setting',
  materials: 'material',
  lots: 'lot',
  moves: 'entry',
  molds: 'mold',
  designs: 'design',
  batches: 'batch',
  plan: 'planLine',
  fairs: 'fair',
  sales: 'sale',
  suppliers: 'supplier',
  places: 'place',
  partners: 'partner',
};

import type { Cell, TableData } from '../../src/workbook/port.ts';

/**
 * A workshop small enough to work out by hand: one mosaic design with a blend, whole fills, spare
 * tiles, a remelt, scent, paint with alcohol, mica and a wrapper. All invented.
 */
export const smallWorkshop: readonly TableData[] = [
  table('Settings', 'Setting|Value', ['Currency|USD', 'Labour rate per hour|12']),
  table('Materials', 'Material|Kind|Unit|Density g/ml|Drops per ml|Pack size|Pack price|INCI', [
    'Clear base|base|g|||1000|9|',
    'White base|base|g|||1000|10|',
    'Blue liquid|colourant|ml|1|20|30|6|CI 42090',
    'Pearl mica|colourant|g|||20|4|Mica',
    'Sweet orange|fragrance|g|||50|7.5|',
    'Rubbing alcohol|extra|ml|0.8|20|250|4|Isopropyl Alcohol',
    'Wrapper|packaging|each|||100|15|',
  ]),
  table('Lots', 'Lot|Material|Received|Quantity|Paid|Freight|Best before', [
    'L-1|Clear base|2026-09-01|300|2.4||2027-06-01',
    'L-2|Clear base|2026-10-01|2000|18||2027-09-01',
    'L-3|White base|2026-09-01|1000|10||',
    'L-4|Blue liquid|2026-09-01|30|6||',
    'L-5|Pearl mica|2026-09-01|20|4||',
    'L-6|Sweet orange|2026-09-01|50|7.5||',
    'L-7|Rubbing alcohol|2026-09-01|250|4||',
    'L-8|Wrapper|2026-09-01|100|15||',
  ]),
  table('LedgerLines', 'Entry|When|Reason|Material|Quantity|Lot|Value|Batch|By|Note', [
    'M-1|2026-10-05|left over|Blue leftover|12||0.12|||',
    'M-2|2026-10-05|spare|Blue × Small tiles|10||0.1|||',
  ]),
  table('Molds', 'Mold|Makes|Cavities|Fill g|Scrape g|Price|Life fills', [
    'Small tiles|tiles|36|25|1|8|200',
    'Bar loaf|bars|6|600||20|100',
  ]),
  table('Colours', 'Colour|Ingredient|Amount|Measure', [
    'Blue|Clear base|100|g',
    'Blue|Blue liquid|8|drops',
    'Pearl|White base|50|g',
    'Pearl|Pearl mica|0.35|g',
    'Mist|Blue|15|parts',
    'Mist|Pearl|10|parts',
  ]),
  table('Designs', 'Design|Bar mold|Labour minutes|Setup minutes|Yield %|Price|Hands-off hours', [
    'Harbour Light|Bar loaf|5|20|100|7|48',
    'Plain Wave|Bar loaf|2|10|90|4|24',
  ]),
  table('Layers', 'Design|Layer|Part|Item|Mold|Per bar|Per', [
    'Harbour Light|1|tiles|Blue|Small tiles|12|each',
    'Harbour Light|2|tiles|Mist|Small tiles|12|each',
    'Harbour Light|3|pour|Clear base||60|g',
    'Harbour Light|4|scent|Sweet orange||1|g',
    'Harbour Light|5|paint|Rubbing alcohol||6|drops',
    'Harbour Light|6|pack|Wrapper||1|each',
    'Plain Wave|1|pour|White base||90|g',
  ]),
  table('Batches', batchHeaders(), [
    'B-OLD|2026-10-05|Plain Wave|6|6|0|30|1.5|0.6|2026-10-06|posted||',
  ]),
];

/** The workshop with one table's rows changed. */
export function withRows(
  tables: readonly TableData[],
  name: string,
  change: (rows: readonly (readonly Cell[])[]) => readonly (readonly Cell[])[],
): readonly TableData[] {
  return tables.map((known) =>
    known.name === name ? { ...known, rows: change(known.rows) } : known,
  );
}

/** Rows from text lines; a figure becomes a number, as a sheet would have it. */
export function rowsOf(lines: readonly string[]): readonly (readonly Cell[])[] {
  return lines.map((line) =>
    line.split('|').map((cell) => (/^-?\d+(?:\.\d+)?$/u.test(cell) ? Number(cell) : cell)),
  );
}

function table(name: string, headers: string, lines: readonly string[]): TableData {
  return { name, headers: headers.split('|'), rows: rowsOf(lines) };
}

function batchHeaders(): string {
  return 'Batch|Poured|Design|Bars|Good|Seconds|Minutes|Material cost|Cost per bar|Ready on|State|By|Note|Lost';
}

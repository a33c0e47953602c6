import type { Column } from '../../workbook/column.ts';
import { settingSpecs } from '../../workbook/read/settings.ts';
import { type TableKind, tables } from '../../workbook/schema.ts';
import { soapOrMaterialList } from '../sheets/lists-sheet.ts';
import type { DropDown } from '../cells/sheet.ts';

/** Rows below a table that have its drop-downs already. */
const ROOM_ROWS = 25;

/** Drop-downs for a table: the schema's own words, and names that another table holds. */
export function dropDownsFor(kind: TableKind, headerRow: number, rows: number): DropDown[] {
  if (kind === 'settings') return settingChoices(headerRow);
  const lastRow = headerRow + Math.max(1, rows) + ROOM_ROWS;
  return Object.entries<Column<unknown>>(tables[kind].columns).flatMap(
    ([key, column], index): DropDown[] => {
      const range = {
        startRow: headerRow + 1,
        startColumn: index,
        endRow: lastRow,
        endColumn: index,
      };
      if (column.choices !== undefined) return [{ range, choices: column.choices, strict: false }];
      const source = nameSources[kind]?.[key];
      return source === undefined ? [] : [{ range, choices: { source }, strict: false }];
    },
  );
}

const column = (table: string, header: string): string => `=INDIRECT("${table}[${header}]")`;
export const designNames = column('Designs', 'Design');
export const batchNames = column('Batches', 'Batch');
export const moldNames = column('Molds', 'Mold');
export const fairNames = column('Fairs', 'Fair');
const placeNames = column('Places', 'Place');
const partnerNames = column('Partners', 'Partner');
export const materialNames = column('Materials', 'Material');

/** Which columns hold names that stand in another table. */
const nameSources: Partial<Readonly<Record<TableKind, Readonly<Record<string, string>>>>> = {
  lots: { material: materialNames, paidBy: partnerNames },
  colours: { ingredient: soapOrMaterialList },
  designs: { barMold: moldNames },
  layers: { design: designNames, item: soapOrMaterialList, mold: moldNames },
  plan: { design: designNames, fair: fairNames },
  sales: { design: designNames, fair: fairNames, place: placeNames, takenBy: partnerNames },
  priceBreaks: { material: materialNames },
};

/** Settings that are one of a few words; each stands in its own row. */
function settingChoices(headerRow: number): DropDown[] {
  const valueColumn = Object.keys(tables.settings.columns).indexOf('value');
  return Object.values(settingSpecs).flatMap(({ column: { choices } }, index) => {
    if (choices === undefined) return [];
    const row = headerRow + 1 + index;
    const range = { startRow: row, startColumn: valueColumn, endRow: row, endColumn: valueColumn };
    return [{ range, choices, strict: false }];
  });
}

import { ICommandService, type Injector } from '@univerjs/presets';
import { IFunctionService, SetSuperTableMutation } from '@univerjs/preset-sheets-core';
import type { LiveTable, LiveTables } from './live-tables.ts';
import { UNIT_ID } from './sheet-ids.ts';

/**
 * Makes the workbook's tables known to the formula engine by name, as they stand. The returned function tells it
 * which have moved since, and each that moves from then on.
 */
export function tellTables(injector: Injector, tables: LiveTables): () => void {
  const told = new Map<string, LiveTable>();
  const tell = (table: LiveTable) => {
    told.set(table.name, table);
    tellEngine(injector, table, tables.image(table).headers);
  };
  for (const table of tables.all()) tell(table);
  return () => {
    for (const table of tables.all()) if (told.get(table.name) !== table) tell(table);
    tables.onMoved(tell);
  };
}

/** Makes formulas that name the table see it as it is now. */
function tellEngine(injector: Injector, table: LiveTable, headers: readonly string[]): void {
  // The engine keeps parsed formulas with the range their tables had: it must parse them again.
  injector.get(IFunctionService).deleteFormulaAstCacheKey(table.name);
  injector.get(ICommandService).syncExecuteCommand(SetSuperTableMutation.id, {
    unitId: UNIT_ID,
    tableName: table.name,
    reference: {
      sheetId: table.sheetId,
      range: { ...table.range },
      titleMap: new Map(headers.map((header, index) => [header, index])),
    },
  });
}

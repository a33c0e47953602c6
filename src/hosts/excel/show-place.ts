import { nameKey } from '../../domain/kernel/names.ts';
import type { TablePlace } from '../../workbook/port.ts';
import type { Run } from './apply-change.ts';

/** Selects a table's cell, which also shows its sheet. */
export const showPlace = (run: Run, { table: name, row, header }: TablePlace): Promise<void> =>
  run(async (context) => {
    const headers = context.workbook.tables.getItem(name).getHeaderRowRange().load('values');
    await context.sync();
    const [names = []] = headers.values as readonly (readonly unknown[])[];
    const column = names.findIndex((known) => nameKey(String(known)) === nameKey(header ?? ''));
    headers.getCell(row, Math.max(0, column)).select();
    await context.sync();
  });

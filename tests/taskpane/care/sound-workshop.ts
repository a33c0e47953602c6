import type { TableData } from '../../../src/workbook/port.ts';
import { smallWorkshop } from '../small-workshop.ts';

/** The small workshop before anything was poured: its older batch came without its moves. */
export const soundWorkshop: readonly TableData[] = smallWorkshop.map((table) =>
  table.name === 'LedgerLines' || table.name === 'Batches' ? { ...table, rows: [] } : table,
);

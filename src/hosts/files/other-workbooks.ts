import type { ValueWorkbook } from '../../workbook/port.ts';
import { writeWorkbook } from '../xlsx/write/write-workbook.ts';
import { describeValues } from './value-workbook.ts';

/** What `browserFiles` loads when it is first needed: reading and writing of .xlsx. */
export { readTables } from '../xlsx/read/read-tables.ts';

/** The bytes of a workbook of values. */
export const bytesOf = (workbook: ValueWorkbook): Uint8Array =>
  writeWorkbook(describeValues(workbook));

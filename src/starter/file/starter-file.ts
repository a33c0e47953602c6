import type { Day } from '../../domain/kernel/day.ts';
import { demoWorkbook, emptyWorkbook } from '../starter-workbook.ts';
import { writeWorkbook } from '../../xlsx/write/write-workbook.ts';
import { describeStarter } from './describe-starter.ts';

/**
 * The bytes of the .xlsx with the invented workshop, its season about to begin on `today`, and every
 * formula with the answer that it has on that day.
 */
export const demoFile = (today: Day): Uint8Array =>
  writeWorkbook(describeStarter(demoWorkbook(today), 'Pour Ledger, with an invented workshop'));

/** The bytes of the .xlsx with the same sheets for a maker's own; the same on every day. */
export const emptyFile = (): Uint8Array =>
  writeWorkbook(describeStarter(emptyWorkbook(), 'Pour Ledger'));

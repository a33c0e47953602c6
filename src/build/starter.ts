import { writeFileSync } from 'node:fs';
import { writeWorkbook } from '../hosts/xlsx/write/write-workbook.ts';
import { demoWorkbook, emptyWorkbook } from '../workbook/starter/starter-workbook.ts';
import { describeStarter } from './describe-starter.ts';
import { inProject } from './folders.ts';

/** Writes the two starter workbooks into dist/: one with the invented workshop, one for a maker's own. */
writeFileSync(
  inProject('dist/pour-ledger.xlsx'),
  writeWorkbook(describeStarter(demoWorkbook(), 'Pour Ledger, with an invented workshop')),
);
writeFileSync(
  inProject('dist/pour-ledger-empty.xlsx'),
  writeWorkbook(describeStarter(emptyWorkbook(), 'Pour Ledger')),
);

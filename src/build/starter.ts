import { writeFileSync } from 'node:fs';
import { demoFile, emptyFile } from '../starter/file/starter-file.ts';
import { demoDay } from '../starter/demo/season.ts';
import { inProject } from './folders.ts';

/**
 * Writes the two starter workbooks into dist/: one with the invented workshop, on the day that it was
 * written for so that each build is the same, and one for a maker's own.
 */
writeFileSync(inProject('dist/pour-ledger.xlsx'), demoFile(demoDay));
writeFileSync(inProject('dist/pour-ledger-empty.xlsx'), emptyFile());

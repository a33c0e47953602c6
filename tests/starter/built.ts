import { describeStarter } from '../../src/starter/file/describe-starter.ts';
import type { NewWorkbook } from '../../src/xlsx/write/new-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import {
  demoWorkbook,
  emptyWorkbook,
  type StarterWorkbook,
} from '../../src/starter/starter-workbook.ts';

/** One variant of the starter workbook, as data, as described and as bytes. */
export interface Built {
  readonly starter: StarterWorkbook;
  readonly described: NewWorkbook;
  readonly bytes: Uint8Array;
}

export const variants: readonly (readonly [string, () => StarterWorkbook])[] = [
  ['demo', demoWorkbook],
  ['empty', emptyWorkbook],
];

export function build(make: () => StarterWorkbook): Built {
  const starter = make();
  const described = describeStarter(starter, 'Pour Ledger');
  return { starter, described, bytes: writeWorkbook(described) };
}

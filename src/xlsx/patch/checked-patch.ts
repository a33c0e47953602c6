import type { SheetEdits } from '../image.ts';
import { readWorkbook, type WorkbookRead } from '../read/read-workbook.ts';
import type { Refused } from '../refusal.ts';
import { missingEdit } from '../verify.ts';
import { patchWorkbook } from './patch-workbook.ts';

/** A workbook with edits in it, not yet put anywhere. */
export interface Prepared {
  readonly kind: 'prepared';
  readonly bytes: Uint8Array;
  /** What those bytes hold. */
  readonly read: WorkbookRead;
}

/** The patched bytes, read back and compared with what was asked. */
export function checkedPatch(
  current: Uint8Array,
  edits: readonly SheetEdits[],
  fileName: string,
): Prepared | Refused {
  const patched = patchWorkbook(current, edits);
  if (patched.kind === 'refused') return patched;
  const read = readWorkbook(patched.bytes, fileName);
  const wrong = read.kind === 'refused' ? read.sentence : missingEdit(read.workbook, edits);
  if (read.kind === 'read' && wrong === undefined) {
    return { kind: 'prepared', bytes: patched.bytes, read };
  }
  return {
    kind: 'refused',
    sentence: `Nothing was saved: on checking the new file, ${wrong ?? ''}. Your file is as it was.`,
  };
}

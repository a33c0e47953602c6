import { dropCalcChain } from '../parts/calc-chain.ts';
import { addMetadata, dynamicArrayIndex } from '../parts/dynamic-arrays.ts';
import type { SheetEdits } from '../image.ts';
import { openPackage, type Package } from '../parts/package.ts';
import { patchSheet } from './patch-sheet.ts';
import { patchTable } from './patch-table.ts';
import { sheetTables } from '../read/read-table.ts';
import { Refusal, refusedOr, type Refused } from '../refusal.ts';
import { readWorkbookParts, type SheetPart, type WorkbookParts } from '../parts/workbook-parts.ts';
import { pack as packPart, writeZip } from '../zip/zip-write.ts';

export interface WorkbookPatched {
  readonly kind: 'patched';
  readonly bytes: Uint8Array;
}

/**
 * Applies edits to the bytes of an .xlsx. Only the edited cells and table ranges change; every other
 * part keeps its very bytes. Refuses, with a sentence and without any change, what would lose data.
 */
export function patchWorkbook(
  bytes: Uint8Array,
  edits: readonly SheetEdits[],
): WorkbookPatched | Refused {
  return refusedOr(() => ({ kind: 'patched', bytes: patched(bytes, edits) }));
}

function patched(bytes: Uint8Array, edits: readonly SheetEdits[]): Uint8Array {
  const pack = openPackage(bytes);
  const parts = readWorkbookParts(pack);
  const changed = new Map<string, string>();
  const dynamic = dynamicArrayIndex(pack, parts);
  let formulasChanged = false;
  for (const sheetEdits of edits) {
    const sheet = sheetOf(parts, sheetEdits.sheet);
    formulasChanged = patchOne(pack, sheet, sheetEdits, dynamic, changed) || formulasChanged;
  }
  const spilled = [...changed.values()].some((text) => / cm="\d/.test(text));
  if (spilled && parts.metadataPart === undefined) take(changed, addMetadata(pack, changed));
  const chain = formulasChanged ? dropCalcChain(pack, parts, changed) : undefined;
  if (chain) take(changed, chain.changed);
  return zipped(pack, changed, chain?.removed);
}

function patchOne(
  pack: Package,
  sheet: SheetPart,
  edits: SheetEdits,
  dynamic: number | undefined,
  changed: Map<string, string>,
): boolean {
  if (changed.has(sheet.part)) throw new Refusal(`The sheet "${sheet.name}" is edited twice.`);
  const source = pack.text(sheet.part);
  const result = patchSheet(sheet.part, source, edits, sheetTables(pack, sheet), dynamic);
  changed.set(sheet.part, result.text);
  for (const change of result.tables) {
    changed.set(change.table.part, patchTable(pack.text(change.table.part), change));
  }
  return result.formulasChanged;
}

function sheetOf(parts: WorkbookParts, name: string): SheetPart {
  const sheet = parts.sheets.find((each) => each.name === name && each.kind === 'worksheet');
  if (!sheet) throw new Refusal(`The workbook has no sheet "${name}".`);
  return sheet;
}

function take(into: Map<string, string>, from: ReadonlyMap<string, string>): void {
  for (const [part, text] of from) into.set(part, text);
}

function zipped(
  pack: Package,
  changed: ReadonlyMap<string, string>,
  removed: string | undefined,
): Uint8Array {
  const encode = (name: string, text: string) => packPart(name, new TextEncoder().encode(text));
  const kept = pack.entries
    .filter((entry) => entry.name !== removed)
    .map((entry) => {
      const text = changed.get(entry.name);
      return text === undefined || text === pack.text(entry.name)
        ? entry
        : encode(entry.name, text);
    });
  const added = [...changed]
    .filter(([name]) => !pack.has(name))
    .map(([name, text]) => encode(name, text));
  return writeZip([...kept, ...added]);
}

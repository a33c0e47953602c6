import type { Package, PartLink } from './package.ts';
import { MAX_SHEETS } from '../limits.ts';
import { Refusal } from '../refusal.ts';
import { child, childrenOf, isOn, parseXml } from '../xml/xml-tree.ts';

/** One sheet as the workbook lists it. */
export interface SheetPart {
  readonly name: string;
  readonly hidden: boolean;
  /** "worksheet", "chartsheet" or "dialogsheet". */
  readonly kind: string;
  readonly part: string;
}

export interface StoredName {
  readonly name: string;
  readonly refersTo: string;
  /** Names of one sheet only, and Excel's own (_xlnm.), carry this. */
  readonly special: boolean;
}

/** The workbook's index: sheets in order, names, and the parts that all sheets share. */
export interface WorkbookParts {
  readonly sheets: readonly SheetPart[];
  readonly names: readonly StoredName[];
  readonly links: readonly PartLink[];
  readonly stringsPart: string | undefined;
  readonly stylesPart: string | undefined;
  readonly themePart: string | undefined;
  readonly metadataPart: string | undefined;
}

/** Reads xl/workbook.xml and its links. */
export function readWorkbookParts(pack: Package): WorkbookParts {
  const root = parseXml(pack.workbookPart, pack.text(pack.workbookPart));
  if (isOn(child(root, 'workbookPr')?.attributes['date1904'])) {
    throw new Refusal(
      'This workbook counts its dates from 1904. In Excel, clear "Use 1904 date system" (Options, Advanced), check the dates and save.',
    );
  }
  const links = pack.links(pack.workbookPart);
  const partOf = (kind: string) => {
    const part = links.find((link) => link.kind === kind && !link.outside)?.target;
    return part !== undefined && pack.has(part) ? part : undefined;
  };
  const sheets = childrenOf(child(root, 'sheets'), 'sheet').map(({ attributes }) => {
    const id = linkId(attributes);
    const link = links.find((each) => each.id === id);
    if (!link || !pack.has(link.target)) {
      throw new Refusal(`This workbook is damaged: its sheet "${attributes['name']}" is missing.`);
    }
    const hidden = (attributes['state'] ?? 'visible') !== 'visible';
    return { name: attributes['name'] ?? '', hidden, kind: link.kind, part: link.target };
  });
  if (sheets.length > MAX_SHEETS) {
    throw new Refusal(`This workbook has more than ${MAX_SHEETS} sheets, so it was not opened.`);
  }
  // One part under many names would be read, held and written as often.
  refuseTwice(sheets.map(({ part }) => part));
  const names = childrenOf(child(root, 'definedNames'), 'definedName').map((each) => ({
    name: each.attributes['name'] ?? '',
    refersTo: each.text.trim(),
    special:
      each.attributes['localSheetId'] !== undefined ||
      (each.attributes['name'] ?? '').startsWith('_xlnm.'),
  }));
  return {
    sheets,
    names,
    links,
    stringsPart: partOf('sharedStrings'),
    stylesPart: partOf('styles'),
    themePart: partOf('theme'),
    metadataPart: partOf('sheetMetadata'),
  };
}

/** Refuses a part that stands for two sheets or two tables. */
export function refuseTwice(parts: readonly string[]): void {
  const seen = new Set<string>();
  const twice = parts.find((part) => seen.size === seen.add(part).size);
  if (twice === undefined) return;
  throw new Refusal(`This workbook is damaged: its part "${twice}" stands in two places.`);
}

/** The `r:id` of an element, whatever prefix the file gave the namespace. */
function linkId(attributes: Readonly<Record<string, string>>): string | undefined {
  return Object.entries(attributes).find(([name]) => name.endsWith(':id'))?.[1];
}

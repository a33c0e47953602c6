import { dynamicArrayMetadata } from './metadata.ts';
import { OFFICE_LINKS, contentTypes } from './namespaces.ts';
import { linksPart, type Package } from './package.ts';
import type { WorkbookParts } from './workbook-parts.ts';
import { child, childrenOf, parseXml } from '../xml/xml-tree.ts';
import { rootPrefix } from '../xml/xml-walk.ts';

/**
 * The number that a cell's `cm` needs for a dynamic array. A workbook without metadata will get the
 * part (`addMetadata`), so 1; with other metadata only, undefined: an older array formula is written.
 */
export function dynamicArrayIndex(pack: Package, parts: WorkbookParts): number | undefined {
  const part = parts.metadataPart;
  if (part === undefined) return 1;
  const root = parseXml(part, pack.text(part));
  const types = childrenOf(child(root, 'metadataTypes'), 'metadataType');
  const type = types.findIndex((each) => each.attributes['name'] === 'XLDAPR') + 1;
  const cells = childrenOf(child(root, 'cellMetadata'), 'bk');
  const index = cells.findIndex((bk) => Number(child(bk, 'rc')?.attributes['t']) === type);
  return type > 0 && index >= 0 ? index + 1 : undefined;
}

/** The parts that change so that the workbook has metadata for dynamic arrays. */
export function addMetadata(
  pack: Package,
  changed: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  const now = (part: string) => changed.get(part) ?? pack.text(part);
  const links = linksPart(pack.workbookPart);
  const folder = pack.workbookPart.slice(0, pack.workbookPart.lastIndexOf('/') + 1);
  const part = `${folder}metadata.xml`;
  const id = freeId(now(links));
  return new Map([
    [part, dynamicArrayMetadata],
    [
      '[Content_Types].xml',
      appended(
        now('[Content_Types].xml'),
        'Override',
        `PartName="/${part}" ContentType="${contentTypes.sheetMetadata}"`,
      ),
    ],
    [
      links,
      appended(
        now(links),
        'Relationship',
        `Id="${id}" Type="${OFFICE_LINKS}/sheetMetadata" Target="metadata.xml"`,
      ),
    ],
  ]);
}

function appended(source: string, element: string, attributes: string): string {
  const at = source.lastIndexOf('</');
  return `${source.slice(0, at)}<${rootPrefix(source)}${element} ${attributes}/>${source.slice(at)}`;
}

function freeId(source: string): string {
  let number = 1;
  while (source.includes(`"rIdPour${number}"`)) number += 1;
  return `rIdPour${number}`;
}

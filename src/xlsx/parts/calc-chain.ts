import { linksPart, type Package } from './package.ts';
import type { WorkbookParts } from './workbook-parts.ts';
import { childrenOf, parseXml } from '../xml/xml-tree.ts';
import { applySplices } from '../xml/splice.ts';

export interface CalcChainDropped {
  readonly removed: string | undefined;
  readonly changed: ReadonlyMap<string, string>;
}

/** Drops the calculation order, which Excel rebuilds; a stale one would make it call the file damaged. */
export function dropCalcChain(
  pack: Package,
  parts: WorkbookParts,
  changed: ReadonlyMap<string, string>,
): CalcChainDropped {
  const part = parts.links.find((link) => link.kind === 'calcChain')?.target;
  if (part === undefined || !pack.has(part)) return { removed: undefined, changed: new Map() };
  const links = linksPart(pack.workbookPart);
  const now = (name: string) => changed.get(name) ?? pack.text(name);
  const without = (
    name: string,
    element: string,
    attribute: string,
    test: (value: string) => boolean,
  ) => {
    const source = now(name);
    const gone = childrenOf(parseXml(name, source), element).filter((each) =>
      test(each.attributes[attribute] ?? ''),
    );
    return applySplices(
      source,
      gone.map(({ start, end }) => ({ start, end, text: '' })),
    );
  };
  return {
    removed: part,
    changed: new Map([
      [
        '[Content_Types].xml',
        without('[Content_Types].xml', 'Override', 'PartName', (name) => name === `/${part}`),
      ],
      [links, without(links, 'Relationship', 'Type', (type) => type.endsWith('/calcChain'))],
    ]),
  };
}

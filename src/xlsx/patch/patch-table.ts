import { rangeName } from '../address.ts';
import type { TableChange } from './plan-tables.ts';
import { applySplices, withAttribute } from '../xml/splice.ts';
import { child, type XmlElement } from '../xml/xml-tree.ts';

/** A table part with its new range, in the table and in its filter; nothing else changes. */
export function patchTable(source: string, { table, ref }: TableChange): string {
  const filter = child(table.root, 'autoFilter');
  const retag = (element: XmlElement) => ({
    start: element.start,
    end: element.openEnd,
    text: withAttribute(source.slice(element.start, element.openEnd), 'ref', rangeName(ref)),
  });
  return applySplices(source, [retag(table.root), ...(filter ? [retag(filter)] : [])]);
}

import {
  CONTENT_TYPES,
  DECLARATION,
  OFFICE_LINKS,
  PACKAGE_LINKS,
  contentTypes,
} from './namespaces.ts';
import type { PartKind } from './namespaces.ts';
import { linksPart } from './package.ts';
import { escapeXml } from '../xml/xml-text.ts';

/** The parts of a package being written, with their kinds and links. */
export interface PartSet {
  add(name: string, kind: PartKind, xml: string): void;
  /** Links one part ("" for the package itself) to another and answers the link's id. */
  link(from: string, kind: string, to: string): string;
  /** 1, 2, 3 … for each kind of thing. */
  next(kind: string): number;
  /** Every part, the content types first, links included. */
  all(): readonly (readonly [name: string, xml: string])[];
}

const CORE_LINK =
  'http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties';

export function partSet(): PartSet {
  const parts: { name: string; kind: PartKind; xml: string }[] = [];
  const links = new Map<string, string[]>();
  const counts = new Map<string, number>();
  return {
    add: (name, kind, xml) => {
      parts.push({ name, kind, xml });
    },
    link(from, kind, to) {
      const standing = links.get(from) ?? [];
      const id = `rId${standing.length + 1}`;
      const type = kind === 'coreProperties' ? CORE_LINK : `${OFFICE_LINKS}/${kind}`;
      const target = escapeXml(relativeTo(from, to));
      standing.push(`<Relationship Id="${id}" Type="${type}" Target="${target}"/>`);
      links.set(from, standing);
      return id;
    },
    next(kind) {
      const count = (counts.get(kind) ?? 0) + 1;
      counts.set(kind, count);
      return count;
    },
    all: () => [
      ['[Content_Types].xml', contentTypesXml(parts)],
      ...[...links].map(([from, each]) => [linksPart(from), linksXml(each)] as const),
      ...parts.map(({ name, xml }) => [name, xml] as const),
    ],
  };
}

/** A part's name seen from another's folder; some readers do not understand absolute names. */
function relativeTo(from: string, to: string): string {
  const [here, there] = [from.split('/').slice(0, -1), to.split('/')];
  let common = 0;
  while (common < here.length && here[common] === there[common]) common += 1;
  return [...here.slice(common).map(() => '..'), ...there.slice(common)].join('/');
}

function contentTypesXml(parts: readonly { name: string; kind: PartKind }[]): string {
  const each = parts.map(
    ({ name, kind }) => `<Override PartName="/${name}" ContentType="${contentTypes[kind]}"/>`,
  );
  return (
    `${DECLARATION}<Types xmlns="${CONTENT_TYPES}">` +
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    `<Default Extension="xml" ContentType="application/xml"/>${each.join('')}</Types>`
  );
}

function linksXml(each: readonly string[]): string {
  return `${DECLARATION}<Relationships xmlns="${PACKAGE_LINKS}">${each.join('')}</Relationships>`;
}

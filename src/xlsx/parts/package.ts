import { Refusal } from '../refusal.ts';
import { childrenOf, parseXml } from '../xml/xml-tree.ts';
import { readZip, unpack, type ZipEntry } from '../zip/zip-read.ts';

/** A link from one part to another, resolved to the part's name. */
export interface PartLink {
  readonly id: string;
  /** The last step of the relationship's type, such as "worksheet". */
  readonly kind: string;
  /** The part's name without a leading slash; for an outside link, its address. */
  readonly target: string;
  readonly outside: boolean;
}

/** An opened .xlsx: parts by name, unpacked when asked for. */
export interface Package {
  readonly entries: readonly ZipEntry[];
  /** The main workbook part's name, usually "xl/workbook.xml". */
  readonly workbookPart: string;
  has(part: string): boolean;
  /** A part's text without its byte-order mark; refuses when it is missing or is not UTF-8. */
  text(part: string): string;
  links(part: string): readonly PartLink[];
}

/** Opens the bytes of an .xlsx and refuses macro files, other formats and unsafe packages. */
export function openPackage(bytes: Uint8Array): Package {
  const entries = readZip(bytes);
  const byName = new Map(entries.map((entry) => [entry.name, entry]));
  const texts = new Map<string, string>();
  const text = (part: string) => {
    const known = texts.get(part);
    if (known !== undefined) return known;
    const entry = byName.get(part);
    if (!entry) throw new Refusal(`This workbook lacks its part "${part}".`);
    const read = decode(part, unpack(entry));
    texts.set(part, read);
    return read;
  };
  const links = (part: string) => {
    const file = linksPart(part);
    return byName.has(file) ? readLinks(part, file, text(file)) : [];
  };
  if (!byName.has('[Content_Types].xml')) throw new Refusal('This is not an .xlsx workbook.');
  const workbook = links('').find((link) => link.kind === 'officeDocument' && !link.outside);
  if (!workbook) throw new Refusal('This is not an .xlsx workbook.');
  refuseOtherKinds(text('[Content_Types].xml'), entries);
  return { entries, workbookPart: workbook.target, has: (part) => byName.has(part), text, links };
}

/** Where the links of a part are kept: "xl/_rels/workbook.xml.rels". */
export function linksPart(part: string): string {
  const cut = part.lastIndexOf('/') + 1;
  return `${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`;
}

function refuseOtherKinds(contentTypes: string, entries: readonly ZipEntry[]): void {
  const types = parseXml('[Content_Types].xml', contentTypes).children.map(
    (each) => each.attributes['ContentType'] ?? '',
  );
  const macros =
    types.some((type) => /macroEnabled|vbaProject/i.test(type)) ||
    entries.some((entry) => /vbaProject\.bin$/i.test(entry.name));
  if (macros) {
    throw new Refusal('This workbook carries macros. Save it as a plain .xlsx and open that.');
  }
  if (!types.some((type) => type.endsWith('spreadsheetml.sheet.main+xml'))) {
    throw new Refusal('This is not an .xlsx workbook (a template or another kind of file).');
  }
}

function readLinks(part: string, file: string, text: string): readonly PartLink[] {
  const folder = part.slice(0, part.lastIndexOf('/') + 1);
  return childrenOf(parseXml(file, text), 'Relationship').map(({ attributes }) => {
    const outside = attributes['TargetMode'] === 'External';
    const target = attributes['Target'] ?? '';
    return {
      id: attributes['Id'] ?? '',
      kind: (attributes['Type'] ?? '').replace(/^.*\//, ''),
      target: outside ? target : resolve(folder, target),
      outside,
    };
  });
}

function resolve(folder: string, target: string): string {
  if (target.startsWith('/')) return target.slice(1);
  const steps = folder.split('/').slice(0, -1);
  for (const step of target.split('/')) {
    if (step === '..') steps.pop();
    else if (step !== '.') steps.push(step);
  }
  return steps.join('/');
}

function decode(part: string, bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal(`The part "${part}" is not written in UTF-8, so it cannot be read.`);
  }
}

/**
 * Walks XML and tells where each element stands in the text, so that a patch can cut and paste the
 * source. saxes: strict, small, and the one well-kept parser that reports positions.
 */
import { SaxesParser } from 'saxes';
import { MAX_XML_DEPTH } from './limits.ts';
import { Refusal } from './refusal.ts';

export type Attributes = Readonly<Record<string, string>>;

export interface XmlVisitor {
  /** `start`..`end` is the opening tag in the text. */
  open(name: string, attributes: Attributes, start: number, end: number, depth: number): void;
  /** `start`..`end` is the closing tag; for `<a/>` it is the whole tag. */
  close(name: string, start: number, end: number, depth: number): void;
  text?(text: string): void;
}

/**
 * Visits every element of one part. Names lose the root's own prefix (`x:c` is `c`); others keep
 * theirs. Refuses what is not well formed and every DTD, so no entity can be declared.
 */
export function walkXml(part: string, source: string, visitor: XmlVisitor): void {
  const parser = new SaxesParser<{ position: true }>({ position: true });
  let depth = 0;
  let prefix: string | undefined;
  const plain = (name: string) =>
    prefix && name.startsWith(prefix) ? name.slice(prefix.length) : name;
  const tagStart = () => source.lastIndexOf('<', parser.position - 1);
  parser.on('doctype', () => {
    throw new Refusal(`The part "${part}" declares a document type, which no workbook needs.`);
  });
  parser.on('xmldecl', ({ encoding }) => {
    if (encoding !== undefined && !/^utf-?8$/i.test(encoding)) {
      throw new Refusal(`The part "${part}" is written in ${encoding}; only UTF-8 can be read.`);
    }
  });
  parser.on('opentag', (tag) => {
    prefix ??= tag.name.includes(':') ? tag.name.slice(0, tag.name.indexOf(':') + 1) : '';
    if (depth > MAX_XML_DEPTH) throw new Refusal(`The part "${part}" is nested too deeply.`);
    // Without the xmlns option the attributes are plain texts; the parser's type allows both.
    const attributes = tag.attributes as Attributes;
    visitor.open(plain(tag.name), attributes, tagStart(), parser.position, depth);
    depth += 1;
  });
  parser.on('closetag', (tag) => {
    depth -= 1;
    visitor.close(plain(tag.name), tagStart(), parser.position, depth);
  });
  const onText = visitor.text?.bind(visitor);
  if (onText) {
    parser.on('text', onText);
    parser.on('cdata', onText);
  }
  parser.on('error', (error) => {
    throw new Refusal(`The part "${part}" is damaged (${error.message}).`);
  });
  parser.write(source).close();
}

/** The prefix, with its colon, that the root element of a part carries; "" for most files. */
export function rootPrefix(source: string): string {
  return /<([A-Za-z_][\w.-]*:)?[A-Za-z_][\w.-]*[\s/>]/.exec(source)?.[1] ?? '';
}

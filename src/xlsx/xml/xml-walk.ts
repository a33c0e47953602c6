/**
 * Walks XML and tells where each element stands in the text, so that a patch can cut and paste the
 * source. saxes: strict, small, and the one well-kept parser that reports positions.
 */
import { SaxesParser } from 'saxes';
import { MAX_XML_DEPTH } from '../limits.ts';
import { Refusal } from '../refusal.ts';

export type Attributes = Readonly<Record<string, string>>;

export interface XmlVisitor {
  /** `start`..`end` is the opening tag in the text. */
  open(name: string, attributes: Attributes, start: number, end: number, depth: number): void;
  /** `start`..`end` is the closing tag; for `<a/>` it is the whole tag. */
  close(name: string, start: number, end: number, depth: number): void;
  text?(text: string): void;
}

/** Lets a visitor read a stretch of a part by itself. */
export interface Leap {
  /** Where the walk is next to ask, at or after `at`. */
  pause(at: number): number;
  /** Where it is to go on when it has read everything before `at`: `at` itself, or further. */
  landing(at: number): number;
}

/**
 * Visits every element of one part. Names lose the root's own prefix (`x:c` is `c`); others keep
 * theirs. Refuses what is not well formed and every DTD, so no entity can be declared. What is leapt
 * over must be whole elements.
 */
export function walkXml(part: string, source: string, visitor: XmlVisitor, leap?: Leap): void {
  const parser = new SaxesParser<{ position: true }>({ position: true });
  let depth = 0;
  let prefix: string | undefined;
  const plain = (name: string) =>
    prefix && name.startsWith(prefix) ? name.slice(prefix.length) : name;
  let leapt = 0;
  const place = () => parser.position + leapt;
  const tagStart = () => source.lastIndexOf('<', place() - 1);
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
    visitor.open(plain(tag.name), attributes, tagStart(), place(), depth);
    depth += 1;
  });
  parser.on('closetag', (tag) => {
    depth -= 1;
    visitor.close(plain(tag.name), tagStart(), place(), depth);
  });
  const onText = visitor.text?.bind(visitor);
  if (onText) {
    parser.on('text', onText);
    parser.on('cdata', onText);
  }
  parser.on('error', (error) => {
    // The parser counts lines and columns without what was leapt over.
    const fault = error.message.replace(/^(\d+:)+ /, '');
    throw new Refusal(`The part "${part}" is damaged (${fault}).`);
  });
  for (let at = 0; at < source.length;) {
    const next = leap?.pause(at) ?? source.length;
    parser.write(source.slice(at, next));
    at = leap?.landing(next) ?? next;
    leapt += at - next;
  }
  parser.close();
}

/** The prefix, with its colon, that the root element of a part carries; "" for most files. */
export function rootPrefix(source: string): string {
  return /<([A-Za-z_][\w.-]*:)?[A-Za-z_][\w.-]*[\s/>]/.exec(source)?.[1] ?? '';
}

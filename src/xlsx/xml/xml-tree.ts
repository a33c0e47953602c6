import { walkXml, type Attributes } from './xml-walk.ts';

/** One element of a small part, with its place in the source text. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly XmlElement[];
  /** Its own text, children's text not included. */
  readonly text: string;
  readonly start: number;
  /** Just after the opening tag. */
  readonly openEnd: number;
  /** Just before the closing tag; equal to `start` when the element is written `<a/>`. */
  readonly closeStart: number;
  readonly end: number;
}

interface Growing {
  name: string;
  attributes: Attributes;
  children: XmlElement[];
  text: string;
  start: number;
  openEnd: number;
  closeStart: number;
  end: number;
}

/** Reads a whole part as a tree. For sheets, which are large, use `walkXml`. */
export function parseXml(part: string, source: string): XmlElement {
  const path: Growing[] = [];
  let root: Growing | undefined;
  walkXml(part, source, {
    open(name, attributes, start, openEnd) {
      const element: Growing = {
        name,
        attributes,
        children: [],
        text: '',
        start,
        openEnd,
        closeStart: start,
        end: openEnd,
      };
      path.at(-1)?.children.push(element);
      root ??= element;
      path.push(element);
    },
    close(_name, start, end) {
      const element = path.pop();
      if (!element) return;
      element.closeStart = start;
      element.end = end;
    },
    text(text) {
      const element = path.at(-1);
      if (element) element.text += text;
    },
  });
  if (!root) throw new Error('saxes accepts no part without a root element');
  return root;
}

/** The first child of that name. */
export function child(element: XmlElement | undefined, name: string): XmlElement | undefined {
  return element?.children.find((each) => each.name === name);
}

/** All children of that name. */
export function childrenOf(element: XmlElement | undefined, name: string): readonly XmlElement[] {
  return element?.children.filter((each) => each.name === name) ?? [];
}

/** Every element of that name below `element`, in document order. */
export function descendants(element: XmlElement, name: string): readonly XmlElement[] {
  return element.children.flatMap((each) => [
    ...(each.name === name ? [each] : []),
    ...descendants(each, name),
  ]);
}

/** An on/off attribute or child in its several spellings; absent means `otherwise`. */
export function isOn(value: string | undefined, otherwise = false): boolean {
  if (value === undefined) return otherwise;
  return value !== '0' && value !== 'false';
}

/** One change to a text: what stands from `start` to `end` gives way to `text`. */
export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Applies changes that do not overlap; insertions at one place keep their order in the list. */
export function applySplices(source: string, splices: readonly Splice[]): string {
  const ordered = [...splices].sort((a, b) => a.start - b.start || a.end - b.end);
  const pieces: string[] = [];
  let at = 0;
  for (const { start, end, text } of ordered) {
    if (start < at) throw new Error('two changes overlap');
    pieces.push(source.slice(at, start), text);
    at = end;
  }
  return pieces.join('') + source.slice(at);
}

/** An opening tag with one attribute set, or removed when `value` is undefined. */
export function withAttribute(tag: string, name: string, value: string | undefined): string {
  const standing = new RegExp(`\\s${name}\\s*=\\s*("[^"]*"|'[^']*')`);
  const bare = tag.replace(standing, '');
  if (value === undefined) return bare;
  const attribute = ` ${name}="${value}"`;
  if (standing.test(tag)) return tag.replace(standing, () => attribute);
  return bare.replace(/\s*\/?>$/, (close) => `${attribute}${close.trim()}`);
}

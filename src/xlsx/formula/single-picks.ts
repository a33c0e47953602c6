import { NAMESPACE } from './add-in-functions.ts';

/**
 * Masked code without the places where INDEX takes one cell, its row and column written out, of what
 * one of our functions answers: such a formula fills a single cell, and INDEX takes a whole list
 * without being told (as it always did, before formulas could spill).
 */
export function withoutSinglePicks(code: string): string {
  const start = new RegExp(`(?<![\\w.])INDEX\\((?=_xldudf_${NAMESPACE}_\\w+\\()`, 'gi');
  let rest = '';
  let from = 0;
  for (const { index, 0: match } of code.matchAll(start)) {
    if (index < from) continue;
    const end = callEnd(code, code.indexOf('(', index + match.length));
    const single = /^,[1-9]\d*,[1-9]\d*\)/.exec(code.slice(end))?.[0];
    if (single === undefined) continue;
    rest += code.slice(from, index);
    from = end + single.length;
  }
  return rest + code.slice(from);
}

/** The place after the bracket that closes the one at `open`. */
function callEnd(code: string, open: number): number {
  let depth = 0;
  for (let at = open; at < code.length; at += 1) {
    if (code[at] === '(') depth += 1;
    else if (code[at] === ')') depth -= 1;
    if (depth === 0) return at + 1;
  }
  return code.length;
}

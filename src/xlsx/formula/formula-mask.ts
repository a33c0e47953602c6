/**
 * Lets formula rewriting see code only: string literals, quoted sheet names and bracketed parts are
 * put aside as tokens while `rewrite` runs, then put back unchanged.
 */
export function rewriteCode(
  formula: string,
  rewrite: (code: string) => string,
  bracket: (text: string) => string = (text) => text,
): string {
  const aside: string[] = [];
  const masked = maskInto(formula, aside);
  return rewrite(masked).replace(/\uE000(\d+)\uE001/g, (_match, index: string) => {
    const text = aside[Number(index)] ?? '';
    return text.startsWith('[') ? bracket(text) : text;
  });
}

function maskInto(formula: string, aside: string[]): string {
  let masked = '';
  for (let at = 0; at < formula.length;) {
    const end = asideEnd(formula, at);
    if (end === at) {
      masked += formula[at] ?? '';
      at += 1;
    } else {
      masked += `\uE000${aside.length}\uE001`;
      aside.push(formula.slice(at, end));
      at = end;
    }
  }
  return masked;
}

/** Where the literal that begins at `at` ends; `at` itself when none begins there. */
function asideEnd(formula: string, at: number): number {
  const first = formula[at];
  if (first === '"' || first === "'") return quoteEnd(formula, at, first);
  return first === '[' ? bracketEnd(formula, at) : at;
}

function quoteEnd(formula: string, at: number, quote: string): number {
  for (let end = at + 1; end < formula.length; end += 1) {
    if (formula[end] !== quote) continue;
    if (formula[end + 1] !== quote) return end + 1;
    end += 1;
  }
  return formula.length;
}

function bracketEnd(formula: string, at: number): number {
  let depth = 0;
  for (let end = at; end < formula.length; end += 1) {
    // In a structured reference an apostrophe escapes the next character.
    if (formula[end] === "'") end += 1;
    else if (formula[end] === '[') depth += 1;
    else if (formula[end] === ']') depth -= 1;
    if (depth === 0) return end + 1;
  }
  return formula.length;
}

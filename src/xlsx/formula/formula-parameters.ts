import { rewriteCode } from './formula-mask.ts';

/** Stores the names that LET and LAMBDA bind with the file's `_xlpm.` prefix. */
export function prefixParameters(formula: string): string {
  return rewriteCode(formula, (code) => {
    const names = boundNames(code);
    if (names.size === 0) return code;
    return code.replace(/(?<![\w.!$])[A-Za-z_][\w.]*(?![\w.(!])/g, (word) =>
      names.has(word.toUpperCase()) ? `_xlpm.${word}` : word,
    );
  });
}

function boundNames(code: string): ReadonlySet<string> {
  const names = new Set<string>();
  for (const call of code.matchAll(/(?<![\w.])(LET|LAMBDA)\(/gi)) {
    const parts = argumentsFrom(code, call.index + call[0].length);
    const step = call[1]?.toUpperCase() === 'LET' ? 2 : 1;
    // The last argument is the calculation, never a name.
    for (let index = 0; index < parts.length - 1; index += step) {
      const name = parts[index]?.trim().replace(/^\[|\]$/g, '') ?? '';
      if (/^[A-Za-z_][\w.]*$/.test(name)) names.add(name.toUpperCase());
    }
  }
  return names;
}

function argumentsFrom(code: string, start: number): readonly string[] {
  const parts: string[] = [];
  let depth = 0;
  let from = start;
  for (let at = start; at < code.length; at += 1) {
    const character = code[at];
    if (character === '(' || character === '{') depth += 1;
    if (character === ')' && depth === 0) return [...parts, code.slice(from, at)];
    if (character === ')' || character === '}') depth -= 1;
    if (character === ',' && depth === 0) {
      parts.push(code.slice(from, at));
      from = at + 1;
    }
  }
  return [...parts, code.slice(from)];
}

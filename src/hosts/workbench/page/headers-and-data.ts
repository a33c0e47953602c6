import type { Injector } from '@univerjs/presets';
import { Lexer } from '@univerjs/preset-sheets-core';

const HEADERS_AND_DATA = /\[\s*\[#Headers\]\s*,\s*\[#Data\]\s*\]/gi;

/**
 * Lets formulas ask for a table's headers and data together, which the engine can't read. Its tables have no total
 * row, so it reads all of them instead; the formula stays as it is written.
 */
export function readHeadersAndData(injector: Injector): void {
  const lexer = injector.get(Lexer);
  const build = lexer.treeBuilder.bind(lexer);
  lexer.treeBuilder = (formula, ...more) =>
    build(formula.replace(HEADERS_AND_DATA, '[#All]'), ...more);
}

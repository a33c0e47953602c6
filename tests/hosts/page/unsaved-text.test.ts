import { describe, expect, it } from 'vitest';
import { textOfEdits } from '../../../src/hosts/workbench/page/unsaved-text.ts';
import type { Cell } from '../../../src/workbook/port.ts';

const lineOf = (value: Cell, formula?: string, sheet = 'Notes'): string =>
  textOfEdits([
    {
      sheet,
      tables: [],
      cells: [{ row: 6, column: 1, value, ...(formula === undefined ? {} : { formula }) }],
    },
  ]);

describe('unsaved cells as text', () => {
  it.each<readonly [string, Cell, string | undefined, string]>([
    ['plain text', 'Slate', undefined, 'Slate'],
    ['a number below zero', -5, undefined, '-5'],
    ['a tick', true, undefined, 'true'],
    ['a formula', 2, '=1+1', "'=1+1"],
    ['text that a sheet would run', '=HYPERLINK("x")', undefined, `"'=HYPERLINK(""x"")"`],
    ['the same behind a space', ' @x', undefined, "' @x"],
    ['a tab', 'a\tb', undefined, '"a\tb"'],
    ['a new line', 'a\nb', undefined, '"a\nb"'],
    ['a quotation mark', 'a "b"', undefined, '"a ""b"""'],
  ])('%s', (_what, value, formula, text) => {
    expect(lineOf(value, formula)).toBe(`Notes\tB7\t${text}`);
  });

  it('of a sheet with a name that would run', () => {
    expect(lineOf('Slate', undefined, '=x')).toBe("'=x\tB7\tSlate");
  });
});

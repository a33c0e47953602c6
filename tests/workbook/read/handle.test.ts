import { expect, it } from 'vitest';
import { handleOf, printOf } from '../../../src/workbook/read/handle.ts';
import { Findings } from '../../../src/workbook/read/findings.ts';
import { recogniseTable, type TableRange } from '../../../src/workbook/read/recognise.ts';
import type { Cell } from '../../../src/workbook/port.ts';

const HEADERS = ['Setting', 'Value', 'Note'];

function handle(...rows: readonly (readonly Cell[])[]): string {
  const range: TableRange = [HEADERS, ...rows];
  const table = recogniseTable(range, 1, new Findings());
  if (table === undefined) throw new Error('not recognised');
  return handleOf([printOf(table)]);
}

it('tells apart a great many tables that differ in little', () => {
  const handles = new Set<string>();
  let tables = 0;
  const add = (...rows: readonly (readonly Cell[])[]): void => {
    handles.add(handle(...rows));
    tables += 1;
  };
  for (let a = 0; a < 120; a += 1) {
    for (let b = 0; b < 120; b += 1) {
      add([`s${a}`, b, '']);
      add([`s${a}`, `${b}`, '']);
      add([`s${a}`, '', b]);
      add([a / 10, b / 10, 'x']);
      if (a < b) add([a, '', ''], [b, '', '']);
    }
  }
  expect(handles.size).toBe(tables);
});

it.each([
  ['a number and its text', [['a', 1, '']], [['a', '1', '']]],
  ['TRUE and its text', [['a', true, '']], [['a', 'true', '']]],
  ['one cell and the next', [['a', 'b', '']], [['a', '', 'b']]],
  ['two cells run together', [['ab', 'c', '']], [['a', 'bc', '']]],
  [
    'one row and the same row twice',
    [['a', 1, '']],
    [
      ['a', 1, ''],
      ['a', 1, ''],
    ],
  ],
  [
    'cells swapped between rows',
    [
      ['a', 1, ''],
      ['b', 2, ''],
    ],
    [
      ['a', 2, ''],
      ['b', 1, ''],
    ],
  ],
] as const)('tells apart %s', (_, one, other) => {
  expect(handle(...one)).not.toBe(handle(...other));
});

it('does not see rows that are blank', () => {
  expect(handle(['a', 1, ''], ['', '', ''])).toBe(handle(['a', 1, '']));
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseSaveRequest } from '../../../src/hosts/workbench/server/save-request.ts';

const cell = { row: 0, column: 1, value: 'x' };
const range = { startRow: 0, startColumn: 0, endRow: 1, endColumn: 1 };
const request = (cells: unknown, tables: unknown = []) => ({
  id: 'a-1',
  baseVersion: 'v',
  edits: [{ sheet: 'S', cells, tables }],
});

describe('a save request', () => {
  it.each([
    ['nothing to do', { id: 'a-1', baseVersion: 'v', edits: [] }],
    ['what goes over another', { id: 'a-1', baseVersion: 'v', after: 'a_0', edits: [] }],
    ['a value', request([cell])],
    ['a formula', request([{ ...cell, formula: '=A1' }])],
    [
      'a spill',
      request([
        {
          ...cell,
          formula: '=A1',
          spill: [
            [1, 'a'],
            [true, ''],
          ],
        },
      ]),
    ],
    ['a table', request([], [{ name: 'T', range, headers: ['a'] }])],
  ])('is taken: %s', (_what, value) => {
    expect(parseSaveRequest(JSON.stringify(value))).toEqual(value);
  });

  it.each([
    ['no JSON', '{'],
    ['null', 'null'],
    ['a list', '[]'],
    ['no version', JSON.stringify({ id: 'a', edits: [] })],
    ['no id', JSON.stringify({ baseVersion: 'v', edits: [] })],
    ['an empty id', JSON.stringify({ ...request([]), id: '' })],
    ['an id that is none', JSON.stringify({ ...request([]), id: { length: 1 } })],
    ['a long id', JSON.stringify({ ...request([]), id: 'x'.repeat(65) })],
    ['an earlier id that is none', JSON.stringify({ ...request([]), after: 7 })],
    ['a negative row', JSON.stringify(request([{ ...cell, row: -1 }]))],
    ['a half column', JSON.stringify(request([{ ...cell, column: 0.5 }]))],
    ['no value', JSON.stringify(request([{ row: 0, column: 0 }]))],
    ['a null value', JSON.stringify(request([{ ...cell, value: null }]))],
    ['an object value', JSON.stringify(request([{ ...cell, value: {} }]))],
    ['a formula without "="', JSON.stringify(request([{ ...cell, formula: 'A1' }]))],
    ['a spill without a formula', JSON.stringify(request([{ ...cell, spill: [[1]] }]))],
    ['a table without a range', JSON.stringify(request([], [{ name: 'T', headers: [] }]))],
    [
      'no tables',
      JSON.stringify({ id: 'a', baseVersion: 'v', edits: [{ sheet: 'S', cells: [] }] }),
    ],
  ])('is not taken: %s', (_what, text) => {
    expect(parseSaveRequest(text)).toBeUndefined();
  });

  it('never throws, whatever comes', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        parseSaveRequest(text);
      }),
    );
  });
});

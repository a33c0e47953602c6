import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChange } from './any-change.ts';
import { changeCases } from './change-cases.ts';
import { inMemory } from './change-hosts.ts';
import { holdCase } from './hold-case.ts';
import { useGrid } from './use-grid.ts';

const inGrid = useGrid();

describe('a change in the workbench’s grid', () => {
  it.each(changeCases)('$name', (one) => holdCase(inGrid, one));

  it('comes to the same as in tables of plain cells, and so in Excel, whatever it is', () =>
    fc.assert(
      fc.asyncProperty(anyChange, async ([tables, change]) => {
        expect(await inGrid(tables, [], change)).toEqual(await inMemory(tables, [], change));
      }),
      { numRuns: 100 },
    ));
});

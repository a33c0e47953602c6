import { describe, expect, it } from 'vitest';
import { spillingFunctions } from '../../src/xlsx/formula/add-in-functions.ts';
import { built } from './built.ts';

interface Metadata {
  readonly functions: readonly {
    readonly id: string;
    readonly result: { readonly dimensionality?: string };
  }[];
}

describe('the functions that the file marks as spilling', () => {
  it('are those whose metadata answers rows', () => {
    const { functions } = JSON.parse(built('dist/functions.json')) as Metadata;
    const rows = functions
      .filter(({ result }) => result.dimensionality === 'matrix')
      .map(({ id }) => id);
    expect([...spillingFunctions].sort()).toEqual(rows.sort());
  });
});

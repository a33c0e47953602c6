import { describe, expect, it } from 'vitest';
import { functionsMetadata } from '../../src/build/functions-metadata.ts';
import { spillingFunctions } from '../../src/xlsx/formula/add-in-functions.ts';
import { inProject } from '../support/in-project.ts';

interface Metadata {
  readonly functions: readonly {
    readonly id: string;
    readonly result: { readonly dimensionality?: string };
  }[];
}

describe('the functions that the file marks as spilling', () => {
  it('are those whose metadata answers rows', async () => {
    const { functions } = JSON.parse(await functionsMetadata(inProject('functions'))) as Metadata;
    const rows = functions
      .filter(({ result }) => result.dimensionality === 'matrix')
      .map(({ id }) => id);
    expect([...spillingFunctions].sort()).toEqual(rows.sort());
  });
});

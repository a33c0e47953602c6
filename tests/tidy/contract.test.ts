import { describe, expect, it } from 'vitest';
import { functions } from '../../functions/index.ts';
import { functionsMetadata } from '../../src/build/functions-metadata.ts';
import { tables } from '../../src/workbook/schema.ts';
import { inProject } from '../support/in-project.ts';
import { contractFunctions, contractTables, contractWords } from '../support/contract.ts';

const metadataText = await functionsMetadata(inProject('functions'));

describe('the tables', () => {
  it('have the contract’s columns, in its order', () => {
    const ours = Object.values(tables).map(({ name, columns }) => [
      name,
      Object.values(columns).map(({ header, required }) => `${header}${required ? '*' : ''}`),
    ]);
    expect(Object.fromEntries(ours)).toEqual(Object.fromEntries(contractTables));
  });

  it('hold the contract’s words', () => {
    const columns = Object.values(tables).flatMap((table) => Object.values(table.columns));
    for (const [header, words] of contractWords) {
      const found = columns.find((column) => column.header === header && 'choices' in column);
      const choices = (found as { choices?: readonly string[] } | undefined)?.choices ?? [];
      expect([...choices].sort(), header).toEqual([...words].sort());
    }
  });
});

describe('the functions', () => {
  const metadata = JSON.parse(metadataText) as {
    readonly functions: readonly {
      readonly id: string;
      readonly parameters: readonly {
        readonly name: string;
        readonly optional?: boolean;
        readonly repeating?: boolean;
      }[];
    }[];
  };

  it('are the contract’s, no more and no fewer', () => {
    expect(Object.keys(functions).sort()).toEqual([...contractFunctions.keys()].sort());
  });

  it.each([...contractFunctions])('%s takes the contract’s arguments', (id, wanted) => {
    const told = metadata.functions.find((entry) => entry.id === id)?.parameters ?? [];
    const taken = told.map(({ name, optional, repeating }) => ({
      name,
      optional: optional ?? false,
      repeating: repeating ?? false,
    }));
    expect(taken).toEqual(wanted.map((argument) => ({ ...argument, name: inCode(argument.name) })));
  });
});

/** A name as the page spells it, run together as code does: "fee %" is feePercent. */
function inCode(name: string): string {
  return name
    .replace('%', 'percent')
    .replace(/ (\w)/g, (_, letter: string) => letter.toUpperCase());
}

import { describe, expect, it } from 'vitest';
import { records } from '../../functions/records/index.ts';
import { type FunctionRecord, kinds, spoken } from '../../functions/records/record.ts';
import { tables } from '../../src/workbook/schema.ts';
import { contractFunctions, contractTables, contractWords } from '../support/contract.ts';

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
  it('take and give what the contract says, no more and no fewer', () => {
    const ours = Object.entries(records).map(([id, record]) => [
      id,
      [takesOf(record), givesOf(record)],
    ]);
    expect(Object.fromEntries(ours)).toEqual(Object.fromEntries(contractFunctions));
  });
});

const takesOf = ({ takes }: FunctionRecord): string =>
  Object.entries(takes)
    .map(([name, { kind, optional }]) => {
      const told = kinds[kind] === 'ranges' ? `${spoken(name)}*` : spoken(name);
      return optional === true ? `[${told}]` : told;
    })
    .join(', ');

function givesOf({ answers }: FunctionRecord): string {
  if (typeof answers === 'string') return answers;
  return answers.columns.join(', ') + (answers.orNumber === true ? '; or number' : '');
}

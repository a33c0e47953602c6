import { describe, expect, it } from 'vitest';
import { Findings } from '../../../src/workbook/read/findings.ts';
import { recogniseTable } from '../../../src/workbook/read/recognise.ts';
import { tableKinds, tables } from '../../../src/workbook/schema.ts';

const headersOf = (kind: (typeof tableKinds)[number], requiredOnly: boolean): string[] =>
  Object.values(tables[kind].columns)
    .filter(({ required }) => required || !requiredOnly)
    .map(({ header }) => header);

function recognise(headers: readonly string[]): { kind: string | undefined; says: string } {
  const findings = new Findings();
  const table = recogniseTable([headers], 3, findings);
  return { kind: table?.kind, says: findings.unread().failure.sentence };
}

describe('a table', () => {
  it.each(tableKinds)(
    '%s is known by all of its headers, and by the required ones alone',
    (kind) => {
      expect(recognise(headersOf(kind, false)).kind).toBe(kind);
      expect(recognise(headersOf(kind, true)).kind).toBe(kind);
    },
  );

  const withOneMissing = tableKinds.flatMap((kind) =>
    headersOf(kind, true).map((missing): [string, string, string[]] => [
      tables[kind].name,
      missing,
      headersOf(kind, false).filter((header) => header !== missing),
    ]),
  );
  it.each(withOneMissing)('%s without %s is still named', (name, missing, headers) => {
    expect(recognise(headers)).toEqual({
      kind: undefined,
      says: `${name} has no column "${missing}". Type this header above its column again, or give BOOK the whole table with its headers.`,
    });
  });

  it.each(tableKinds)(
    '%s is not mistaken for another whose optional headers it has too',
    (kind) => {
      for (const other of tableKinds) {
        const required = new Set(headersOf(other, true));
        const optional = headersOf(other, false).filter((header) => !required.has(header));
        const headers = [...new Set([...headersOf(kind, true), ...optional])];
        expect(recognise(headers).kind, other).toBe(kind);
      }
    },
  );

  it('may not have one of its columns twice', () => {
    expect(recognise([...headersOf('molds', false), 'MOLD']).says).toBe(
      'Molds has the column "Mold" twice. Rename one.',
    );
  });

  it.each([[[]], [['a', 'b']], [['']]])('%j is none', (headers) => {
    expect(recognise(headers).says).toBe(
      'Range 3 is none of the tables: its first row must hold the headers of one.',
    );
  });
});

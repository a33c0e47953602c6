import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { functions } from '../../functions/index.ts';
import { records } from '../../functions/records/index.ts';
import { type FunctionRecord, spills } from '../../functions/records/record.ts';
import { REQUIREMENTS } from '../../src/hosts/excel/requirements.ts';
import { errorOf } from '../support/worksheet-functions.ts';
import { built } from './built.ts';
import { loadBuilt } from './built-functions.ts';

interface Parameter {
  readonly name: string;
  readonly description?: string;
  readonly optional?: boolean;
  readonly repeating?: boolean;
  readonly dimensionality?: string;
}

interface Metadata {
  readonly functions: readonly {
    readonly id: string;
    readonly name: string;
    readonly description?: string;
    readonly parameters: readonly Parameter[];
    readonly result: { readonly dimensionality?: string };
  }[];
}

const metadata = JSON.parse(built('dist/functions.json')) as Metadata;

describe('dist/functions.js', () => {
  const { ids, call } = loadBuilt();

  it('associates every function that functions/ offers, and no other', () => {
    expect(ids).toEqual(Object.keys(functions).sort());
  });

  it('loads without a place to register, and then does nothing', () => {
    expect(() => runInNewContext(built('dist/functions.js'), {})).not.toThrow();
  });

  it.each(ids)('%s called with nothing says what it wants, as a host error', (id) => {
    const { code, message } = errorOf(() => call(id));
    expect(['#VALUE!', '#N/A']).toContain(code);
    expect(message).not.toMatch(/stopped on a fault of its own/);
    expect(message.length).toBeGreaterThan(10);
  });

  it('answers through the host’s own calling form: blanks, nulls and the object about the call', () => {
    const pattern = [
      ['Slate', 'Teal', ''],
      ['Teal', 'Slate', 'Teal'],
    ];
    expect(call('TILECOUNT', pattern, null, { functionName: 'TILECOUNT' })).toEqual([
      ['Colour', 'Tiles'],
      ['Teal', 3],
      ['Slate', 2],
    ]);
  });
});

describe('dist/functions.json', () => {
  it('tells what the records tell, word for word', () => {
    const told = metadata.functions.map(({ id, name, description, parameters, result }) => ({
      names: [id, name],
      help: description,
      spills: result.dimensionality === 'matrix',
      takes: parameters.map((each) => [each.name, each.description, each.optional === true]),
    }));
    const ours = Object.entries<FunctionRecord>(records).map(([id, record]) => ({
      names: [id, id],
      help: record.help,
      spills: spills(record),
      takes: Object.entries(record.takes).map(([name, { help, optional }]) => [
        name,
        help,
        optional === true,
      ]),
    }));
    expect(told).toEqual(ours);
  });

  it.each(metadata.functions.map((entry) => [entry.id, entry] as const))(
    '%s and each of its arguments have help text',
    (_, { description, parameters }) => {
      expect(description ?? '').toMatch(/^[A-Z].{15,}\.$/s);
      for (const parameter of parameters) {
        expect(parameter.description ?? '', parameter.name).toMatch(/^[A-Z].{5,}\.$/s);
      }
    },
  );

  it('asks for nothing that comes with a later CustomFunctionsRuntime than the manifest declares', () => {
    const declared = REQUIREMENTS.find(({ set }) => set === 'CustomFunctionsRuntime')?.version;
    const asked = versionsAskedFor(metadata);
    expect(asked.every((version) => version <= Number(declared))).toBe(true);
    const withDataTypes = { allowCustomDataForDataTypeAny: true, ...metadata };
    expect(Math.max(...versionsAskedFor(withDataTypes))).toBe(1.4);
  });
});

/**
 * The CustomFunctionsRuntime that each word of the metadata came with: from the vendor's page "Custom functions
 * requirement sets" (learn.microsoft.com/javascript/api/requirement-sets/excel/custom-functions-requirement-sets),
 * which names allowCustomDataForDataTypeAny for 1.4; the words of 1.1 are those of its first metadata.
 */
const CAME_WITH: Readonly<Record<string, number>> = {
  ...Object.fromEntries(
    [
      'functions',
      'id',
      'name',
      'description',
      'parameters',
      'result',
      'type',
      'dimensionality',
    ].map((word) => [word, 1.1]),
  ),
  optional: 1.1,
  repeating: 1.1,
  allowCustomDataForDataTypeAny: 1.4,
};

/** What each word in a metadata file asks for; one not known here asks for more than there is. */
function versionsAskedFor(told: unknown): number[] {
  if (typeof told !== 'object' || told === null) return [];
  if (Array.isArray(told)) return told.flatMap(versionsAskedFor);
  return Object.entries(told).flatMap(([word, value]) => [
    CAME_WITH[word] ?? Infinity,
    ...versionsAskedFor(value),
  ]);
}

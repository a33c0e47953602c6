import { parseTree } from 'custom-functions-metadata';
import { type Answers, type FunctionRecord, kinds } from '../../functions/records/record.ts';

/**
 * Answers the text of functions.json: what the standard generator reads in the records, which it is given as functions with
 * doc tags. It would also ask for data types (entities, pictures in cells), which no function here takes and no
 * one-time purchase of Excel has: there every function would answer #VALUE!.
 */
export function functionsMetadata(records: Readonly<Record<string, FunctionRecord>>): string {
  const tagged = Object.entries(records).map(([id, record]) => declaration(id, record));
  const { functions, extras } = parseTree(tagged.join('\n'), 'records.ts');
  const errors = extras.flatMap((extra) => extra.errors);
  if (errors.length > 0) {
    throw new Error(`The functions' records do not hold:\n${errors.join('\n')}`);
  }
  return `${JSON.stringify({ functions }, null, 4)}\n`;
}

/** Cells are told as `any`: the generator knows no `unknown`, and a cell may always hold something else. */
const cellTypes = { cell: 'any', range: 'any[][]', ranges: 'any[][][]' } as const;

function declaration(id: string, { help, takes, answers }: FunctionRecord): string {
  const told = Object.entries(takes).map(([name, { kind, help: what, optional }]) => {
    const type = cellTypes[kinds[kind]];
    return optional === true
      ? { tag: `@param {${type}} [${name}] ${what}`, parameter: `${name}?: ${type}` }
      : { tag: `@param {${type}} ${name} ${what}`, parameter: `${name}: ${type}` };
  });
  return [
    '/**',
    ...[help, `@customfunction ${id}`, ...told.map(({ tag }) => tag)].map((line) => ` * ${line}`),
    ' */',
    `function ${id}(${told.map(({ parameter }) => parameter).join(', ')}): ${typeOf(answers)} {}`,
  ].join('\n');
}

function typeOf(answers: Answers): string {
  if (answers === 'text') return 'string';
  if (answers === 'numbers') return 'number[][]';
  return answers === 'number' ? 'number' : 'any[][]';
}

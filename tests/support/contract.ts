import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The project's own agreement on tables and functions, read as a test needs it. */
const page = readFileSync(
  fileURLToPath(new URL('../../src/workbook/CONTRACT.md', import.meta.url)),
  'utf8',
);

/** The rows under the headers of the first table that begins with such a header. */
function tableUnder(header: string): string[][] {
  const lines = page.split('\n');
  const from = lines.findIndex((line) => line.startsWith(`| ${header} `));
  if (from < 0) throw new Error(`CONTRACT.md has no table under ${header}.`);
  const end = lines.findIndex((line, at) => at > from && !line.startsWith('|'));
  return lines.slice(from + 2, end).map((line) =>
    line
      .slice(1, -1)
      .split('|')
      .map((cell) => cell.trim()),
  );
}

/** Headers of each table by its name, in order; * marks those a table is known by. */
export const contractTables: ReadonlyMap<string, readonly string[]> = new Map(
  tableUnder('table').map(([name = '', columns = '']) => [name, columns.split(', ')]),
);

/** The words that a column may hold, by its header. */
export const contractWords: ReadonlyMap<string, readonly string[]> = new Map(
  tableUnder('column').map(([header = '', words = '']) => [header, words.split(', ')]),
);

/** Each function's arguments and what it gives, as the page spells them, by its id. */
export const contractFunctions: ReadonlyMap<string, readonly [takes: string, gives: string]> =
  new Map(tableUnder('id').map(([id = '', takes = '', gives = '']) => [id, [takes, gives]]));

import { settingSpecs } from '../../workbook/read/settings.ts';
import type { Cell } from '../../workbook/port.ts';
import type { Cells, Formula, Workings } from './formula.ts';
import { isError } from './cell-errors.ts';
import { flat } from './native.ts';
import { columnCells } from './table-cells.ts';

/** The number that stands beside a name; a blank is 0, an unknown name blank, an error an error. */
export const numberBeside = (name: Formula, names: Cells, numbers: Cells): Formula => ({
  text: lookedUp(name, names, (row) => `INDEX(${numbers.text},${row})`),
  work: (from) => {
    const found = beside(name, names, numbers, from);
    return found === undefined ? '' : found === '' ? 0 : found;
  },
});

/** The text that stands beside a name; blank where the name is unknown, an error an error. */
export const textBeside = (name: Formula, names: Cells, words: Cells): Formula => ({
  text: lookedUp(name, names, (row) => `INDEX(${words.text},${row})&""`),
  work: (from) => String(beside(name, names, words, from) ?? ''),
});

/** Only the name may be missing: an error beside it is shown. An empty cell as name would match the first empty one. */
function lookedUp({ text }: Formula, names: Cells, found: (row: string) => string): string {
  const row = `MATCH(${text},${names.text},0)`;
  const known = `IF(ISNA(${row}),"",${found(row)})`;
  return /^["\d]/u.test(text) ? known : `IF(${text}="","",${known})`;
}

/** The value of a setting that is a number. */
export const numberSet = (key: keyof typeof settingSpecs): Formula =>
  numberBeside(settingName(key), columnCells('settings', 'setting'), settingValues);

/** The value of a setting that is a word. */
export const wordSet = (key: keyof typeof settingSpecs): Formula =>
  textBeside(settingName(key), columnCells('settings', 'setting'), settingValues);

/** What a cell beside must hold to be counted in. */
export type Where = readonly [cells: Cells, is: '' | '>=' | '<', than: Formula];

/** The numbers of those rows added up whose other cells are as asked. */
export const sumWhere = (numbers: Cells, ...where: readonly Where[]): Formula => ({
  text: `SUMIFS(${numbers.text},${where.map(conditionText).join(',')})`,
  work: (from) =>
    rowsWhere(where, from)
      .map((row) => flat(numbers.work(from))[row])
      .filter((cell) => typeof cell === 'number')
      .reduce((a, b) => a + b, 0),
});

/** The numbers added up that stand beside a name with this ending. */
export const sumEnding = (names: Cells, ending: string, numbers: Cells): Formula => ({
  text: `SUMIF(${names.text},"*${ending}",${numbers.text})`,
  work: (from) => {
    const found = flat(names.work(from));
    return flat(numbers.work(from))
      .filter((_, row) => fold(found[row] ?? '').endsWith(fold(ending)))
      .filter((cell) => typeof cell === 'number')
      .reduce((a, b) => a + b, 0);
  },
});

/** The numbers added up that stand beside a text with these words in it. */
export const sumSaying = (texts: Cells, words: string, numbers: Cells): Formula => ({
  text: `SUMIF(${texts.text},"*${words}*",${numbers.text})`,
  work: (from) => {
    const found = flat(texts.work(from));
    return flat(numbers.work(from))
      .filter((_, row) => fold(found[row] ?? '').includes(fold(words)))
      .filter((cell) => typeof cell === 'number')
      .reduce((a, b) => a + b, 0);
  },
});

/** How many rows are as asked. */
export const countWhere = (...where: readonly Where[]): Formula => ({
  text: `COUNTIFS(${where.map(conditionText).join(',')})`,
  work: (from) => rowsWhere(where, from).length,
});

const settingValues = columnCells('settings', 'value');

const settingName = (key: keyof typeof settingSpecs): Formula => {
  const { header } = settingSpecs[key].column;
  return { text: `"${header}"`, work: () => header };
};

const conditionText = ([cells, is, than]: Where): string =>
  `${cells.text},${is === '' ? than.text : `"${is}"&${than.text}`}`;

function rowsWhere(where: readonly Where[], from: Workings): number[] {
  const tests = where.map(([cells, is, than]) => {
    const [row, limit] = [flat(cells.work(from)), flat(than.work(from))[0] ?? ''];
    return row.map((cell) => fits(cell, is, limit));
  });
  return (tests[0] ?? []).flatMap((_, row) => (tests.every((test) => test[row]) ? [row] : []));
}

function fits(cell: Cell, is: Where[1], than: Cell): boolean {
  // Compared with blank or with nothing, no row counts.
  if (cell === '' || than === '' || isError(than)) return false;
  if (is === '') return fold(cell) === fold(than);
  if (typeof cell !== 'number' || typeof than !== 'number') return false;
  return is === '<' ? cell < than : cell >= than;
}

function beside(name: Formula, names: Cells, values: Cells, from: Workings): Cell | undefined {
  const asked = flat(name.work(from))[0] ?? '';
  if (asked === '') return undefined;
  if (isError(asked)) return asked;
  const row = flat(names.work(from)).findIndex((cell) => fold(cell) === fold(asked));
  return row < 0 ? undefined : (flat(values.work(from))[row] ?? '');
}

const fold = (cell: Cell): string => String(cell).toLowerCase();

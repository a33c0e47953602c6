import type { Book } from '../domain/book/book.ts';
import { kindNamed, type TableNames } from './find-tables.ts';
import type { Finding } from './read/findings.ts';
import { type TableKind, tableKinds, tables } from './schema.ts';

/**
 * A sentence as the maker reads it. Ours call a table by its standard name, which cells that only hold a
 * formula know as well; where the sheets can be seen, a table goes by the name on its tab (contract §4).
 */
export type OnSheets = (sentence: string) => string;

/** The words of a workbook's own sheets. What stands in quotation marks, or is a name in `book`, stays as it is. */
export function onSheets(names: TableNames, book?: Book): OnSheets {
  const sheets = new Map<string, string>();
  for (const kind of tableKinds) sheets.set(tables[kind].name, sheetOf(kind, names));
  const kept = book === undefined ? [] : makersNames(book).filter((name) => standard.test(name));
  const found = new RegExp(
    [/"[^"]*"/u.source, ...kept.sort(longestFirst).map(escaped), standard.source].join('|'),
    'gu',
  );
  return (sentence) => sentence.replace(found, (word) => sheets.get(word) ?? word);
}

/** What a table is called where its tab can be seen. */
export const sheetOf = (kind: TableKind, names: TableNames): string =>
  names.get(kind)?.on?.sheet ?? names.get(kind)?.name ?? tables[kind].name;

/** Says findings with the name on the tab and the number beside the row, where the host knows them. */
export function findingsOnSheets(names: TableNames): (finding: Finding) => Finding {
  const words = onSheets(names);
  return (finding) => {
    const kind = kindNamed({ name: finding.table });
    const on = kind && names.get(kind)?.on;
    const says = words(finding.says);
    if (on === undefined) return { ...finding, says };
    const row = finding.row === undefined ? undefined : on.headerRow + finding.row;
    return { ...finding, table: on.sheet, row, says };
  };
}

const standard = new RegExp(
  `\\b(?:${tableKinds.map((kind) => tables[kind].name).join('|')})\\b`,
  'u',
);

const makersNames = (book: Book): string[] => [
  ...[...book.materials.values()].map(({ name }) => name),
  ...[...book.molds.values()].map(({ name }) => name),
  ...[...book.colours.values()].map(({ name }) => name),
  ...[...book.designs.values()].map(({ name }) => name),
  ...[...book.fairs.values()].map(({ fair }) => fair),
  ...[...book.places.values(), ...book.sets.values(), ...book.partners.values()].map(
    ({ name }) => name,
  ),
  ...[...book.batches.values()].map(({ batch }) => batch),
  ...book.lots.map(({ lot }) => lot),
];

const longestFirst = (a: string, b: string): number => b.length - a.length;
const escaped = (name: string): string => name.replace(/[\\^$.*+?()[\]{}|/-]/gu, '\\$&');

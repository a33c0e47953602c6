import type { Book } from '../src/domain/book/book.ts';
import { nameKey } from '../src/domain/kernel/names.ts';
import { indexAfter } from '../src/domain/stock/ledger-index.ts';
import { findTables, kindNamed, likenessOf, type TableNames } from '../src/workbook/find-tables.ts';
import type { TableData } from '../src/workbook/port.ts';
import {
  type Finding,
  Findings,
  findingSentence,
  MOST_SHOWN,
  moreThanShown,
  placeWords,
} from '../src/workbook/read/findings.ts';
import { readBook, recogniseTables } from '../src/workbook/read/read-book.ts';
import { recogniseTable } from '../src/workbook/read/recognise.ts';
import { type TableKind, tables as specs } from '../src/workbook/schema.ts';
import { findingsOnSheets } from '../src/workbook/sheet-words.ts';
import type { WantedPlace } from './task/events.ts';

/** A workbook that can be poured from, or what to mend in its tables first. */
export type BookForPane =
  | { readonly kind: 'ready'; readonly book: Book; readonly names: TableNames }
  | { readonly kind: 'unreadable'; readonly findings: readonly ToMend[] };

/** One thing to mend, said with the names of the sheets, and the cell it speaks of where it is one. */
export interface ToMend {
  readonly sentence: string;
  readonly at?: { readonly place: WantedPlace; readonly words: string };
}

/** Without these there is nothing to pour or nowhere to write it. */
const neededKinds: readonly TableKind[] = ['materials', 'designs', 'layers', 'moves', 'batches'];

/**
 * Reads the workbook's tables; tables that are none of ours are left alone. What has not changed since
 * a book read `before` is taken over from it, and so is what was worked out of it.
 */
export function readTablesOf(all: readonly TableData[], before?: Book): BookForPane {
  const names = findTables(all);
  const shape = [...twice(all, names), ...broken(all, names), ...missing(all, names)];
  if (shape.length > 0) return { kind: 'unreadable', findings: shape };
  const ranges = [...names.values()].map(({ headers, rows }) => [headers, ...rows]);
  const recognised = recogniseTables(ranges);
  if (!recognised.ok) return unreadable(recognised.findings, names);
  const book = readBook(recognised.value, before);
  if (!book.ok) return unreadable(book.findings, names);
  if (before !== undefined) indexAfter(before, book.value);
  return { kind: 'ready', book: book.value, names };
}

function unreadable(findings: readonly Finding[], names: TableNames): BookForPane {
  const onSheet = findingsOnSheets(names);
  return {
    kind: 'unreadable',
    findings: [
      ...findings.slice(0, MOST_SHOWN).map((finding) => toMend(finding, onSheet(finding))),
      ...moreThanShown(findings.length).map((sentence) => ({ sentence })),
    ],
  };
}

function toMend(finding: Finding, shown: Finding): ToMend {
  const sentence = findingSentence(shown);
  const kind = kindNamed({ name: finding.table });
  if (kind === undefined || finding.row === undefined) return { sentence };
  const { row, column } = finding;
  const place = { kind, row, ...(column === undefined ? {} : { header: column }) };
  return { sentence, at: { place, words: placeWords(shown) } };
}

/** Two tables of one kind, neither the likelier: which of them to write to is the maker's to say. */
function twice(all: readonly TableData[], names: TableNames): ToMend[] {
  return all.flatMap((table) => {
    const { kind, likelihood } = likenessOf(table);
    const chosen = kind && names.get(kind);
    if (kind === undefined || chosen === undefined || chosen === table) return [];
    if (likenessOf(chosen).likelihood > likelihood) return [];
    return {
      sentence: `The tables ${chosen.name} and ${table.name} both have the headers of ${specs[kind].name}. Keep one, or change the other's headers.`,
    };
  });
}

/** A table that bears one of our names but lacks a column it is known by. */
function broken(all: readonly TableData[], names: TableNames): ToMend[] {
  return all.flatMap((table) => {
    const kind = kindNamed(table);
    if (kind === undefined || names.has(kind)) return [];
    const findings = new Findings();
    recogniseTable([table.headers], 1, findings);
    return findings.list
      .filter((finding) => nameKey(finding.table) === nameKey(specs[kind].name))
      .map((finding) => ({ sentence: findingSentence(finding) }));
  });
}

function missing(all: readonly TableData[], names: TableNames): ToMend[] {
  const named = new Set(all.map(kindNamed));
  return neededKinds
    .filter((kind) => !names.has(kind) && !named.has(kind))
    .map((kind) => {
      const headers = Object.values(specs[kind].columns)
        .filter(({ required }) => required)
        .map(({ header }) => header);
      return {
        sentence: `The workbook has no ${specs[kind].name} table. Add one with the headers ${headers.join(', ')}.`,
      };
    });
}

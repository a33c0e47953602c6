import type {
  NewCell,
  NewHighlight,
  NewSheet,
  NewTable,
  NewWorkbook,
} from '../../xlsx/write/new-workbook.ts';
import { bookName } from '../cells/names.ts';
import {
  type DropDown,
  holdsFormula,
  type Mark,
  type StarterCell,
  type StarterSheet,
} from '../cells/sheet.ts';
import { bookPlace } from '../sheets/start-sheet.ts';
import type { StarterWorkbook } from '../starter-workbook.ts';
import { describeChart } from './describe-chart.ts';
import {
  bodyStyle,
  gain,
  headerOver,
  helpStyle,
  repeated,
  short,
  styleOf,
  tabColors,
} from './starter-looks.ts';
import { type WorkedOut, placeKey, answerRows, workOut } from './work-out.ts';

/** The starter workbook in the words of the xlsx writer, every formula with its answer. */
export function describeStarter(starter: StarterWorkbook, title: string): NewWorkbook {
  const answers = workOut(starter);
  const { sheet, row, column } = bookPlace;
  const range = { startRow: row, startColumn: column, endRow: row, endColumn: column };
  return {
    title,
    sheets: starter.sheets.map((each) => describeSheet(each, answers)),
    names: [{ name: bookName, sheet, range }],
    activeSheet: sheet,
  };
}

function describeSheet(sheet: StarterSheet, answers: WorkedOut): NewSheet {
  const {
    name,
    group,
    widths,
    heights,
    frozenRows,
    frozenColumns,
    merges,
    charts = [],
    landscape,
  } = sheet;
  const isTable = sheet.table !== undefined;
  return {
    name,
    hidden: group === 'behind',
    tabColor: tabColors[group],
    columnWidths: widths,
    gridLines: isTable,
    cells: sheet.cells.map((cell) => describeCell(sheet, cell, answers)),
    tables: isTable ? [describeTable(sheet)] : [],
    validations: (sheet.dropDowns ?? []).map((list) => ({ ...list, says: sayOf(list) })),
    highlights: (sheet.marks ?? []).map(describeMark),
    charts: charts.map((chart) => describeChart(name, chart)),
    print: {
      landscape,
      ...(isTable ? { repeatRows: sheet.table.row + 1 } : {}),
      ...(sheet.prints === undefined ? {} : { area: sheet.prints }),
    },
    ...(heights === undefined ? {} : { rowHeights: heights }),
    ...(frozenRows === undefined ? {} : { frozenRows }),
    ...(frozenColumns === undefined ? {} : { frozenColumns }),
    ...(merges === undefined ? {} : { merges }),
  };
}

function describeCell(sheet: StarterSheet, cell: StarterCell, answers: WorkedOut): NewCell {
  const { row, column, holds, look } = cell;
  const isHelp = sheet.table !== undefined && look.role === 'note';
  if (!holdsFormula(holds)) {
    return { row, column, value: holds, style: isHelp ? helpStyle : styleOf(look) };
  }
  // A cell of text format turns its formula into text as soon as someone edits it.
  const style = styleOf(look.format === 'text' ? { ...look, format: 'general' } : look);
  const rows = answerRows(answers.get(placeKey(sheet.name, row, column)) ?? '');
  const spills = rows.length > 1 || (rows[0]?.length ?? 0) > 1;
  return {
    row,
    column,
    formula: `=${holds.text}`,
    value: rows[0]?.[0] ?? '',
    style,
    ...(spills ? { spill: rows } : {}),
  };
}

function describeTable({ table, widths }: StarterSheet): NewTable {
  if (table === undefined) throw new Error('This sheet has no table');
  const { row, data, formats } = table;
  return {
    name: data.name,
    row,
    column: 0,
    columns: data.headers.map((header, index) => ({
      header,
      style: bodyStyle(formats[index] ?? 'text'),
      width: widths[index] ?? 12,
    })),
    rows: data.rows,
    headerStyle: headerOver('text'),
  };
}

/** What is said of a value that its list does not hold; where it only warns, the spreadsheet asks whether to go on. */
function sayOf({ choices, strict }: DropDown): string {
  if ('source' in choices) return 'This name is not in the list yet. Go on, and add it there too.';
  const words = `Use one of: ${choices.join(', ')}.`;
  return strict
    ? words
    : `${words} Capital letters don't matter, nor whether a word is of one or of several. Anything else the cell Book will name.`;
}

function describeMark({ range, formula, shows }: Mark): NewHighlight {
  const looks = typeof shows === 'string' ? { short, repeated, gain }[shows] : shows;
  return { range, formula, ...looks };
}

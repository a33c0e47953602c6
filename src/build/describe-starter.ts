import type { NewChart } from '../hosts/xlsx/new-chart.ts';
import type {
  NewCell,
  NewHighlight,
  NewSheet,
  NewTable,
  NewWorkbook,
} from '../hosts/xlsx/new-workbook.ts';
import { bookName } from '../workbook/starter/names.ts';
import {
  type CurveChart,
  isFormula,
  type Mark,
  type SpillLook,
  type StarterCell,
  type StarterSheet,
} from '../workbook/starter/sheet.ts';
import { bookPlace } from '../workbook/starter/start-sheet.ts';
import type { StarterWorkbook } from '../workbook/starter/starter-workbook.ts';
import {
  bodyStyle,
  curveColor,
  headerOver,
  helpStyle,
  repeated,
  short,
  styleOf,
  tabColors,
} from './starter-looks.ts';
import { type Answers, placeKey, rowsOf, workOut } from './work-out.ts';

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

function describeSheet(sheet: StarterSheet, answers: Answers): NewSheet {
  const { name, group, widths, heights, frozenRows, frozenColumns, merges, chart, landscape } =
    sheet;
  const isTable = sheet.table !== undefined;
  return {
    name,
    hidden: group === 'behind',
    tabColor: tabColors[group],
    columnWidths: widths,
    gridLines: isTable,
    cells: [
      ...(sheet.spillLooks ?? []).flatMap(spillCells),
      ...sheet.cells.map((cell) => describeCell(sheet, cell, answers)),
    ],
    tables: isTable ? [describeTable(sheet)] : [],
    validations: sheet.dropDowns ?? [],
    highlights: (sheet.marks ?? []).map(describeMark),
    charts: chart === undefined ? [] : [describeChart(name, chart)],
    print: { landscape, ...(isTable ? { repeatRows: sheet.table.row + 1 } : {}) },
    ...(heights === undefined ? {} : { rowHeights: heights }),
    ...(frozenRows === undefined ? {} : { frozenRows }),
    ...(frozenColumns === undefined ? {} : { frozenColumns }),
    ...(merges === undefined ? {} : { merges }),
  };
}

function describeCell(sheet: StarterSheet, cell: StarterCell, answers: Answers): NewCell {
  const { row, column, holds, look } = cell;
  const isHelp = sheet.table !== undefined && look.role === 'note';
  const style = isHelp ? helpStyle : styleOf(look);
  if (!isFormula(holds)) return { row, column, value: holds, style };
  const rows = rowsOf(answers.get(placeKey(sheet.name, row, column)) ?? '');
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

/** Looks for a list that spills: its header row and the rows it may fill. */
function spillCells({ row, column, rows, formats }: SpillLook): NewCell[] {
  return formats.flatMap((format, right) =>
    Array.from({ length: rows + 1 }, (_, down): NewCell => ({
      row: row + down,
      column: column + right,
      value: '',
      style: down === 0 ? headerOver(format) : bodyStyle(format),
    })).slice(right === 0 ? 1 : 0),
  );
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

function describeMark({ range, formula, shows }: Mark): NewHighlight {
  const looks = shows === 'short' ? short : shows === 'repeated' ? repeated : shows;
  return { range, formula, ...looks };
}

function describeChart(sheet: string, chart: CurveChart): NewChart {
  const { title, description, place, horizontal, vertical } = chart;
  return {
    kind: 'scatter',
    lines: true,
    title,
    description,
    place,
    series: [
      {
        name: vertical.title,
        categories: { sheet, range: horizontal.range },
        values: { sheet, range: vertical.range },
        color: curveColor,
      },
    ],
    horizontalAxis: { title: horizontal.title, minimum: 0 },
    verticalAxis: { title: vertical.title, numberFormat: '0', minimum: 0 },
  };
}

import type { Cell } from '../../workbook/port.ts';
import type { CellImage, WorkbookImage } from '../../xlsx/image.ts';

/**
 * A workbook on its way from the server to the page: lines of JSON, the first with everything but the
 * cells, each other one with a small piece of one sheet's cells. So the page never has to read the
 * whole at once, and knows from the start how much is to come.
 */

/** How many cells a line holds at most, about: few enough to be read between two frames. */
const CELLS_A_LINE = 4_000;

interface FirstLine {
  readonly workbook: WorkbookImage;
  readonly cellCount: number;
}

interface CellsLine {
  /** Index of the sheet. */
  readonly sheet: number;
  /** Four entries for each cell: row, column, style, value. */
  readonly cells: readonly Cell[];
  /** By place in this line: what a formula's cell holds beside its value. */
  readonly formulas: Readonly<Record<number, Pick<CellImage, 'formula' | 'spill'>>>;
}

/** The lines of a workbook, each with its line break. */
export function* bookLines(workbook: WorkbookImage): Iterable<string> {
  const bare = workbook.sheets.map((sheet) => ({ ...sheet, cells: [] }));
  const cellCount = workbook.sheets.reduce((sum, { cells }) => sum + cells.length, 0);
  const first: FirstLine = { workbook: { ...workbook, sheets: bare }, cellCount };
  yield `${JSON.stringify(first)}\n`;
  for (const [sheet, { cells }] of workbook.sheets.entries()) {
    for (let at = 0; at < cells.length; at += CELLS_A_LINE) {
      yield `${JSON.stringify(lineOf(sheet, cells.slice(at, at + CELLS_A_LINE)))}\n`;
    }
  }
}

function lineOf(sheet: number, cells: readonly CellImage[]): CellsLine {
  const formulas: Record<number, Pick<CellImage, 'formula' | 'spill'>> = {};
  cells.forEach(({ formula, spill }, index) => {
    if (formula !== undefined) formulas[index] = { formula, ...(spill ? { spill } : {}) };
  });
  return {
    sheet,
    cells: cells.flatMap(({ row, column, style, value }) => [row, column, style, value]),
    formulas,
  };
}

/** Puts a workbook together again, a line at a time. */
export interface BookReader {
  /** Takes the next line. */
  take(line: string): void;
  /** The share of the cells that were taken, 0 to 1. */
  readonly share: number;
  /** The workbook. Throws with a sentence when lines are missing. */
  finish(): WorkbookImage;
}

export function createBookReader(): BookReader {
  let first: FirstLine | undefined;
  let sheets: CellImage[][] = [];
  let come = 0;
  return {
    take(line) {
      if (first === undefined) {
        first = JSON.parse(line) as FirstLine;
        sheets = first.workbook.sheets.map(() => []);
        return;
      }
      const piece = JSON.parse(line) as CellsLine;
      come += piece.cells.length / 4;
      takeCells(piece, sheets[piece.sheet] ?? []);
    },
    get share() {
      return first === undefined ? 0 : come / Math.max(1, first.cellCount);
    },
    finish() {
      if (first === undefined || come !== first.cellCount) {
        throw new Error('The workbook came only in part. Try again.');
      }
      const { workbook } = first;
      return {
        ...workbook,
        sheets: workbook.sheets.map((sheet, index) => ({ ...sheet, cells: sheets[index] ?? [] })),
      };
    },
  };
}

function takeCells({ cells, formulas }: CellsLine, into: CellImage[]): void {
  for (let at = 0; at < cells.length; at += 4) {
    const [row, column, style] = [cells[at], cells[at + 1], cells[at + 2]] as number[];
    const value = cells[at + 3] ?? '';
    const cell = { row: row ?? 0, column: column ?? 0, style: style ?? 0, value };
    const formula = formulas[at / 4];
    into.push(formula === undefined ? cell : { ...cell, ...formula });
  }
}

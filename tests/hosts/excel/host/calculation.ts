import type { Cell } from '../../../../src/workbook/port.ts';
import type { FormulaCell } from './cells.ts';
import type { Place, Sheet } from './sheet.ts';
import type { WorkbookModel } from './workbook-model.ts';

/** Works out one formula's function by its name, such as POUR.BOOK; throws for a cell error. */
export type Answer = (name: string, args: readonly unknown[]) => Cell;

interface Formula {
  readonly sheet: Sheet;
  readonly place: Place;
  readonly cell: FormulaCell;
}

/**
 * Excel's calculation, as far as formulas of one function go, such as =POUR.ONHAND("Teal", Book):
 * a cell is worked out again when a table or name it refers to was, and not otherwise.
 */
export class Calculation {
  /** Set to manual, nothing is worked out before it is asked for. */
  manual = false;
  /** What a function is handed at most, as on the web; beyond it never comes to an end. */
  mostBytes = Infinity;
  /** How often each formula was worked out. */
  readonly workedOut: string[] = [];
  answer: Answer = () => '#NAME?';
  readonly #model: WorkbookModel;
  readonly #formulas: Formula[] = [];
  readonly #dirty = new Set<Formula>();

  constructor(model: WorkbookModel) {
    this.#model = model;
  }

  /** Puts a formula into one cell with the value that the file has for it. */
  put(sheet: Sheet, row: number, column: number, formula: string, value: Cell): Place {
    const cell = { formula, value };
    const place = { row, column, height: 1, width: 1 };
    sheet.put(row, column, cell);
    sheet.follow(place);
    this.#formulas.push({ sheet, place, cell });
    return place;
  }

  tableChanged(name: string): void {
    this.#mark(({ cell }) => cell.formula.includes(`${name}[`));
    if (!this.manual) this.recalculate();
  }

  /** Marks a place's formulas for the next calculation. */
  setDirty(sheet: Sheet, at: Place): void {
    this.#mark(
      ({ sheet: own, place }) =>
        own === sheet && place.row === at.row && place.column === at.column,
    );
  }

  /** Works out what is marked, in the order in which the formulas were put in. */
  recalculate(): void {
    for (const formula of this.#formulas.filter((one) => this.#dirty.has(one))) {
      const [, name = '', args = ''] = /^=([\w.]+)\((.*)\)$/.exec(formula.cell.formula) ?? [];
      this.workedOut.push(name);
      formula.cell.value = this.#valueOf(name, args);
    }
    this.#dirty.clear();
  }

  #valueOf(name: string, args: string): Cell {
    try {
      const handed = args === '' ? [] : args.split(/,(?!\[)/).map((one) => this.#argument(one));
      if (JSON.stringify(handed).length > this.mostBytes) return '#BUSY!';
      return this.answer(name, handed);
    } catch (problem) {
      return (problem as { readonly code?: string }).code ?? '#VALUE!';
    }
  }

  #mark(touched: (formula: Formula) => boolean): void {
    for (const formula of this.#formulas) {
      if (!touched(formula) || this.#dirty.has(formula)) continue;
      this.#dirty.add(formula);
      for (const [name, where] of this.#model.names) {
        if (typeof where !== 'object' || where.sheet !== formula.sheet) continue;
        if (where.place.row !== formula.place.row || where.place.column !== formula.place.column) {
          continue;
        }
        this.#mark(({ cell }) => new RegExp(`[(,]\\s*${name}\\s*[,)]`, 'i').test(cell.formula));
      }
    }
  }

  #argument(text: string): unknown {
    const plain = text.trim();
    const table = /^(\w+)\[(?:#All|\[#Headers\],\[#Data\])\]$/.exec(plain)?.[1];
    if (table !== undefined) {
      const { sheet, place } = this.#model.table(table);
      return sheet.values(place);
    }
    if (plain.startsWith('"')) return plain.slice(1, -1);
    const named = this.#model.names.get(plain);
    if (named === undefined) return Number(plain);
    // A name of one cell is handed over as the cell's own value.
    return typeof named === 'object' ? named.sheet.values(named.place)[0]?.[0] : named;
  }
}

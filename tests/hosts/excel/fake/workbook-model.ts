import type { Cell } from '../../../../src/workbook/port.ts';

/** A cell as Excel keeps it: a formula's text is not the text a person typed in quotes. */
export type Kept = Cell | { readonly formula: string };

export interface ModelTable {
  name: string;
  sheet: string;
  headers: string[];
  rows: Kept[][];
  showHeaders: boolean;
  /** Columns the table works out itself where a new row leaves them alone. */
  calculated: Record<string, Cell>;
}

/** A fault as Excel reports it. */
export class HostFault extends Error {
  readonly code: string;

  constructor(code: string) {
    super(`${code}: (the host's own wording)`);
    this.code = code;
  }
}

/** The workbook behind the fake client: what Excel would hold, with no notion of proxies or syncs. */
export class WorkbookModel {
  readonly tables: ModelTable[] = [];
  readonly protectedSheets = new Set<string>();
  readonly names: { name: string; type: string }[] = [];
  /** What was worked out again, in order: names marked dirty, then kinds of calculation. */
  readonly recalculated: string[] = [];
  readonly listeners = new Set<() => void>();

  addTable(name: string, headers: string[], rows: Cell[][], more: Partial<ModelTable> = {}): this {
    this.tables.push({
      name,
      headers,
      rows,
      sheet: `${name} sheet`,
      showHeaders: true,
      calculated: {},
      ...more,
    });
    return this;
  }

  table(name: string): ModelTable {
    const found = this.tables.find((table) => table.name.toLowerCase() === name.toLowerCase());
    if (found === undefined) throw new HostFault('ItemNotFound');
    return found;
  }

  addRows(name: string, rows: readonly (readonly (Cell | null)[])[]): void {
    const table = this.#open(name);
    for (const row of rows) {
      if (row.length !== table.headers.length) throw new HostFault('InvalidArgument');
      table.rows.push(
        row.map((cell, column) =>
          cell === null ? (table.calculated[table.headers[column] ?? ''] ?? '') : asTyped(cell),
        ),
      );
    }
    this.#changed();
  }

  setCell(name: string, row: number, column: number, cell: Cell): void {
    const cells = this.#open(name).rows[row];
    if (cells === undefined) throw new HostFault('InvalidArgument');
    cells[column] = asTyped(cell);
    this.#changed();
  }

  deleteRow(name: string, row: number): void {
    const table = this.#open(name);
    if (row < 0 || row >= table.rows.length) throw new HostFault('InvalidArgument');
    table.rows.splice(row, 1);
    this.#changed();
  }

  #open(name: string): ModelTable {
    const table = this.table(name);
    if (this.protectedSheets.has(table.sheet)) throw new HostFault('AccessDenied');
    return table;
  }

  #changed(): void {
    for (const listener of this.listeners) listener();
  }
}

/** What Excel makes of a value handed to it, which it reads as if a person typed it. */
export function asTyped(cell: Cell): Kept {
  if (typeof cell !== 'string') return cell;
  if (cell.startsWith("'")) return cell.slice(1);
  if (/^[=+\-@]/.test(cell) && !/^[+-]?[\d.]+$/.test(cell)) return { formula: cell };
  if (/^(true|false)$/i.test(cell)) return cell.toLowerCase() === 'true';
  if (cell.trim() !== '' && Number.isFinite(Number(cell))) return Number(cell);
  const day = /^\d{1,4}[-/]\d{1,2}([-/]\d{1,4})?$/.test(cell) ? Date.parse(cell) : Number.NaN;
  return Number.isNaN(day) ? cell : Math.floor(day / 86_400_000) + 25_569;
}

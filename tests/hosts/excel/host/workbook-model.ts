import type { Cell } from '../../../../src/workbook/port.ts';
import { Calculation } from './calculation.ts';
import { HostFault } from './host-fault.ts';
import { ModelTable } from './model-table.ts';
import { type Place, Sheet } from './sheet.ts';

/** A change as Excel tells of it. */
export interface ChangeEvent {
  readonly changeType: 'RangeEdited' | 'RowInserted' | 'RowDeleted';
  readonly source: 'Local' | 'Remote';
  readonly tableId: string;
}

/** The workbook in Excel's memory: sheets of cells, tables and names on them. It knows no batches. */
export class WorkbookModel {
  readonly sheets: Sheet[] = [];
  readonly tables: ModelTable[] = [];
  /** Names by their text, each of one place, or of a constant. */
  readonly names = new Map<string, { readonly sheet: Sheet; readonly place: Place } | Cell>();
  readonly calculation = new Calculation(this);
  readonly listeners = new Set<(event: ChangeEvent) => void>();
  /** What the workbook was told to do at its next start with the add-in. */
  startState = 'Inactive';
  /** Workbooks opened beside this one, as base64. */
  readonly opened: string[] = [];
  /** What was selected last. */
  selected: (Place & { readonly sheet: string }) | undefined;
  /** Open for reading only: a batch that writes is refused. */
  readOnly = false;
  /** Someone is typing in a cell: every batch is refused. */
  cellBeingEdited = false;

  sheet(name: string): Sheet {
    const found = this.sheets.find((sheet) => sheet.name === name);
    if (found !== undefined) return found;
    const made = new Sheet(name);
    this.sheets.push(made);
    return made;
  }

  /** Lays a table on a sheet of its own, or below what stands on the sheet named. */
  addTable(
    name: string,
    headers: readonly string[],
    rows: readonly (readonly Cell[])[],
    where: { readonly sheet?: string; readonly row?: number; readonly showHeaders?: boolean } = {},
  ): this {
    const sheet = this.sheet(where.sheet ?? `${name} sheet`);
    const table = new ModelTable(this, `{${this.tables.length + 1}}`, name, sheet, headers, {
      row: where.row ?? 0,
      showHeaders: where.showHeaders ?? true,
    });
    table.lay(rows);
    this.tables.push(table);
    return this;
  }

  /** A table by its name in any case, or by its id. */
  table(key: string): ModelTable {
    const found = this.tables.find(
      ({ id, name }) => id === key || name.toLowerCase() === key.toLowerCase(),
    );
    if (found === undefined) throw new HostFault('ItemNotFound');
    return found;
  }

  removeTable(name: string): void {
    this.tables.splice(this.tables.indexOf(this.table(name)), 1);
  }

  /** Refuses to change what is protected or open for reading only. */
  open(sheet: Sheet): void {
    if (this.readOnly || sheet.protected) throw new HostFault('AccessDenied');
  }

  tell(event: ChangeEvent): void {
    for (const listener of this.listeners) listener(event);
  }

  /** Everything a person would find in the tables. */
  contents(): string {
    return JSON.stringify(this.tables.map(({ name, headers, rows }) => ({ name, headers, rows })));
  }
}

import { nameKey } from '../../../domain/kernel/names.ts';
import { idKey, rowsById } from '../../../workbook/ids.ts';
import type { Append, Cell, Change, Removal, RowToWrite, Update } from '../../../workbook/port.ts';
import { clearingOf, whyKept } from '../../../workbook/removal.ts';

/** A table as the plan sees it: rows count from the first body row. */
export interface PlanTable {
  readonly name: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** Whether a body cell holds a formula, which a written value would destroy. */
  isFormula(row: number, column: number): boolean;
}

/** One value to write, by body row and column of a table. */
export interface PlannedWrite {
  readonly table: string;
  readonly row: number;
  readonly column: number;
  readonly value: Cell;
}

export type Plan =
  | { readonly kind: 'write'; readonly writes: readonly PlannedWrite[] }
  | { readonly kind: 'already there' }
  | { readonly kind: 'refused'; readonly sentence: string };

/** Works out every cell a change writes, or why nothing may be written. Touches nothing. */
export function planOf(tables: readonly PlanTable[], change: Change): Plan {
  try {
    const appended = change.appends.map((append) => planAppend(tableOf(tables, append), append));
    const wanted = change.appends.reduce((sum, { rows }) => sum + rows.length, 0);
    const missing = appended.reduce((sum, { rowCount }) => sum + rowCount, 0);
    if (wanted > 0 && missing === 0) return { kind: 'already there' };
    const { removals = [] } = change;
    const updates = [...change.updates, ...removals.flatMap((one) => clearingIn(tables, one))];
    if (wanted === 0 && removals.length > 0 && updates.length === 0)
      return { kind: 'already there' };
    const updated = planUpdates(tables, updates);
    return {
      kind: 'write',
      writes: [...appended.flatMap(({ writes }) => writes), ...updated.flat()],
    };
  } catch (thrown) {
    if (thrown instanceof Refusal) return { kind: 'refused', sentence: thrown.message };
    throw thrown;
  }
}

class Refusal extends Error {}

interface Appended {
  readonly rowCount: number;
  readonly writes: readonly PlannedWrite[];
}

function planAppend(table: PlanTable, append: Append): Appended {
  const idColumn = columnOf(table, append.idColumn);
  const firstFree = 1 + table.rows.findLastIndex((row) => row.some((cell) => cell !== ''));
  const places = rowsById(idsOf(table, idColumn));
  const seen = new Map<string, RowToWrite>();
  const counts = new Map<string, number>();
  const writes: PlannedWrite[] = [];
  for (const row of append.rows) {
    const cells = cellsOf(table, row);
    const id = idOf(table, append.idColumn, cells.get(idColumn));
    const sameId = idKey(id);
    const alike = (places.get(sameId) ?? []).map((index) => table.rows[index] ?? []);
    const number = counts.get(sameId) ?? 0;
    // Rows that share an id are told apart by their order.
    if (append.shareIds) counts.set(sameId, number + 1);
    const standing = append.shareIds ? alike.slice(number, number + 1) : alike;
    const key = `${sameId} ${String(number)}`;
    if (standing.length > 0) checkSame(table, append.idColumn, id, standing, cells);
    else if (seen.has(key)) checkSameRow(table, append.idColumn, id, seen.get(key), row);
    else {
      const at = firstFree + seen.size;
      seen.set(key, row);
      for (const [column, value] of cells) {
        if (value !== '') writes.push({ table: table.name, row: at, column, value });
      }
    }
  }
  return { rowCount: seen.size, writes };
}

const idsOf = (table: PlanTable, idColumn: number) => table.rows.map((row) => row[idColumn]);

/** What clears a row that still stands as it was read; nothing where it was cleared already. */
function clearingIn(tables: readonly PlanTable[], removal: Removal): Update[] {
  const table = tableOf(tables, removal);
  const ids = idsOf(table, columnOf(table, removal.idColumn));
  const row = table.rows[ids.findIndex((id) => idKey(id) === idKey(removal.id))];
  if (row === undefined) return [];
  const why = whyKept(removal, (header) => row[columnOf(table, header)] ?? '', sameCell);
  if (why !== undefined) throw new Refusal(why);
  return [clearingOf(removal)];
}

function planUpdates(tables: readonly PlanTable[], updates: readonly Update[]): PlannedWrite[][] {
  const looked = new Map<string, ReturnType<typeof rowsById>>();
  return updates.map((update) => {
    const table = tableOf(tables, update);
    const idColumn = columnOf(table, update.idColumn);
    const key = `${table.name} ${String(idColumn)}`;
    const places = looked.get(key) ?? rowsById(idsOf(table, idColumn));
    looked.set(key, places);
    return planUpdate(table, update, places.get(idKey(update.id)) ?? []);
  });
}

function planUpdate(table: PlanTable, update: Update, found: readonly number[]): PlannedWrite[] {
  const where = `${table.name}, ${update.idColumn} ${update.id}`;
  const row = found[update.nth ?? 0];
  if (row === undefined) throw new Refusal(`${where}: there is no such row any more. Read again.`);
  if (found.length > 1 && update.nth === undefined) {
    throw new Refusal(`${where} stands in ${String(found.length)} rows: keep one, then try again.`);
  }
  return [...cellsOf(table, update.set)].map(([column, value]) => {
    if (table.isFormula(row, column)) {
      throw new Refusal(
        `${where}: the cell under ${headerAt(table, column)} holds a formula, which is not overwritten.`,
      );
    }
    return { table: table.name, row, column, value };
  });
}

function tableOf(tables: readonly PlanTable[], { table }: Append | Update | Removal): PlanTable {
  const found = tables.find(({ name }) => nameKey(name) === nameKey(table));
  if (!found) throw new Refusal(`The workbook has no table named ${table}.`);
  return found;
}

function columnOf(table: PlanTable, header: string): number {
  const column = table.headers.findIndex((there) => nameKey(there) === nameKey(header));
  if (column < 0) {
    throw new Refusal(`The table ${table.name} has no column ${header}: add it, then try again.`);
  }
  return column;
}

function cellsOf(table: PlanTable, row: RowToWrite): Map<number, Cell> {
  const cells = new Map<number, Cell>();
  for (const [header, value] of Object.entries(row)) {
    if (typeof value === 'number' && !Number.isFinite(value)) {
      throw new Refusal(`${table.name}, ${header}: ${String(value)} is no number to write.`);
    }
    cells.set(columnOf(table, header), value);
  }
  return cells;
}

function idOf(table: PlanTable, header: string, value: Cell | undefined): string {
  const id = String(value ?? '').trim();
  if (id === '') throw new Refusal(`${table.name}: a row to add has no ${header}.`);
  return id;
}

function checkSame(
  table: PlanTable,
  idColumn: string,
  id: string,
  standing: readonly (readonly Cell[])[],
  cells: ReadonlyMap<number, Cell>,
): void {
  for (const [column, value] of cells) {
    const there = standing[0]?.[column] ?? '';
    if (column === columnOf(table, idColumn) || sameCell(there, value)) continue;
    throw new Refusal(
      `${table.name}, ${idColumn} ${id} is there already with another ${headerAt(table, column)}: ` +
        `${String(there)}, not ${String(value)}. Nothing was written.`,
    );
  }
}

function checkSameRow(
  table: PlanTable,
  idColumn: string,
  id: string,
  first: RowToWrite | undefined,
  second: RowToWrite,
): void {
  const headers = new Set([...Object.keys(first ?? {}), ...Object.keys(second)]);
  for (const header of headers) {
    if (sameCell(cellIn(first, header), cellIn(second, header))) continue;
    throw new Refusal(`${table.name}: two rows to add share the ${idColumn} ${id} but differ.`);
  }
}

/** A header may be called what every object has. */
const cellIn = (row: RowToWrite | undefined, header: string): Cell =>
  row !== undefined && Object.hasOwn(row, header) ? (row[header] ?? '') : '';

const headerAt = (table: PlanTable, column: number): string => (table.headers[column] ?? '').trim();

const sameCell = (left: Cell, right: Cell): boolean =>
  typeof left === 'string' && typeof right === 'string'
    ? left.trim() === right.trim()
    : left === right || idKey(left) === idKey(right);

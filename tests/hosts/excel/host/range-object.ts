import type { Cell } from '../../../../src/workbook/port.ts';
import { HostFault } from './host-fault.ts';
import type { HostObject } from './host-object.ts';
import type { ModelTable } from './model-table.ts';
import type { Place, Sheet } from './sheet.ts';
import type { WorkbookModel } from './workbook-model.ts';

/** Where each range is, for calls that take another range. */
const places = new WeakMap<HostObject, () => Place>();

/** `Excel.Range`: a place on a sheet. Values are read as typed, so a text may become a number. */
export function rangeObject(model: WorkbookModel, sheet: Sheet, at: Place): HostObject {
  const place = { ...at };
  const standing = (): Place => {
    if (place.height <= 0 || place.width <= 0) throw new HostFault('InvalidReference');
    return place;
  };
  const part = (row: number, column: number, height: number, width: number): HostObject => {
    const { row: top, column: left } = standing();
    if (top + row < 0 || left + column < 0 || height < 1 || width < 1) {
      throw new HostFault('InvalidArgument');
    }
    return rangeObject(model, sheet, { row: top + row, column: left + column, height, width });
  };
  const range: HostObject = {
    get: {
      Values: () => sheet.values(standing()),
      Formulas: () => sheet.formulas(standing()),
      RowIndex: () => standing().row,
      RowCount: () => standing().height,
      ColumnCount: () => standing().width,
    },
    set: {
      Values: (values: readonly (readonly (Cell | null)[])[]) => {
        const table = tableAt(model, sheet, standing());
        if (table !== undefined) return table.write(place, values);
        model.open(sheet);
        sheet.write(place, values);
      },
    },
    call: {
      GetCell: (row: number, column: number) => part(row, column, 1, 1),
      GetRow: (row: number) => part(row, 0, 1, place.width),
      GetResizedRange: (rows: number, columns: number) =>
        part(0, 0, place.height + rows, place.width + columns),
      GetIntersection: (other: HostObject) => {
        const meets = intersection(standing(), places.get(other)?.());
        return rangeObject(model, sheet, meets);
      },
      Select: () => {
        model.selected = { sheet: sheet.name, ...standing() };
      },
      SetDirty: () => model.calculation.setDirty(sheet, standing()),
      Delete: () => remove(model, sheet, standing()),
    },
    follow: () => {
      sheet.follow(place);
      return () => sheet.leave(place);
    },
  };
  places.set(range, standing);
  return range;
}

function intersection(one: Place, other: Place | undefined): Place {
  if (other === undefined) throw new HostFault('InvalidArgument');
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const height = Math.min(one.row + one.height, other.row + other.height) - row;
  const width = Math.min(one.column + one.width, other.column + other.width) - column;
  if (height <= 0 || width <= 0) throw new HostFault('ItemNotFound');
  return { row, column, height, width };
}

function tableAt(
  model: WorkbookModel,
  sheet: Sheet,
  { row, column }: Place,
): ModelTable | undefined {
  return model.tables.find(
    ({ sheet: own, place }) =>
      own === sheet &&
      row >= place.row &&
      row < place.row + place.height &&
      column >= place.column &&
      column < place.column + place.width,
  );
}

/** Whole rows of a table go as its rows; other ways to delete are not needed here. */
function remove(model: WorkbookModel, sheet: Sheet, place: Place): void {
  const table = tableAt(model, sheet, place);
  if (table === undefined || place.width !== table.place.width) {
    throw new HostFault('InsertDeleteConflict');
  }
  table.deleteRows(place.row - table.body.row, place.height);
}

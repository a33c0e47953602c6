import type { Cell } from '../../../../src/workbook/port.ts';
import { HostFault } from './host-fault.ts';
import type { HostObject } from './host-object.ts';
import type { ModelTable } from './model-table.ts';
import { rangeObject } from './range-object.ts';
import type { Sheet } from './sheet.ts';
import type { WorkbookModel } from './workbook-model.ts';

/** The objects that a batch can start from: the workbook, and what an add-in is to Excel. */
export function rootObject(
  model: WorkbookModel,
  registered: Set<string>,
  name: string,
): HostObject {
  if (name === '') return workbookObject(model, registered);
  if (name === 'Microsoft.AppRuntime.AppRuntimePersistenceService') return persistence(model);
  throw new HostFault('ApiNotFound');
}

/** `Excel.Workbook`. */
function workbookObject(model: WorkbookModel, registered: Set<string>): HostObject {
  return {
    objects: {
      Application: () => ({
        call: {
          Calculate: () => model.calculation.recalculate(),
          CreateWorkbook: (base64: string): HostObject => ({
            call: { Open: () => void model.opened.push(base64) },
          }),
        },
      }),
      Tables: () => tablesObject(model, registered),
      Names: () => namesObject(model),
    },
  };
}

/** `Excel.TableCollection`. */
function tablesObject(model: WorkbookModel, registered: Set<string>): HostObject {
  return {
    get: { Count: () => model.tables.length },
    items: () => model.tables.map((table) => tableObject(model, table)),
    item: (key: string) => tableObject(model, model.table(key)),
    call: {
      GetItemOrNullObject: (key: string) => {
        const found = model.tables.find(({ id, name }) => id === key || name === key);
        return found === undefined ? null : tableObject(model, found);
      },
      _RegisterDataChangedEvent: () => void registered.add('tables changed'),
      _UnregisterDataChangedEvent: () => void registered.delete('tables changed'),
    },
  };
}

/** `Excel.Table`. */
function tableObject(model: WorkbookModel, table: ModelTable): HostObject {
  const range = (place: ModelTable['place']): HostObject => {
    if (place.height === 0) throw new HostFault('ItemNotFound');
    return rangeObject(model, table.sheet, place);
  };
  return {
    id: table.id,
    get: { Id: () => table.id, Name: () => table.name, ShowHeaders: () => table.showHeaders },
    objects: {
      Worksheet: () => sheetObject(table.sheet),
      AutoFilter: () => ({ get: { IsDataFiltered: () => table.filtered } }),
      Rows: () => rowsObject(model, table),
      Columns: () => columnsObject(table, range),
    },
    call: {
      GetHeaderRowRange: () => range({ ...table.place, height: 1 }),
      GetDataBodyRange: () => range(table.body),
    },
  };
}

/** `Excel.TableColumnCollection`. */
function columnsObject(
  table: ModelTable,
  range: (place: ModelTable['place']) => HostObject,
): HostObject {
  const column = (index: number): HostObject => {
    const header = table.headers[index];
    if (header === undefined) throw new HostFault('ItemNotFound');
    return {
      id: header,
      get: { Name: () => header, Index: () => index },
      call: {
        GetDataBodyRange: () =>
          range({ ...table.body, column: table.place.column + index, width: 1 }),
      },
    };
  };
  return {
    get: { Count: () => table.place.width },
    item: (key: string) => column(table.headers.indexOf(key)),
    call: { GetItemAt: column },
  };
}

/** `Excel.TableRowCollection`. */
const rowsObject = (model: WorkbookModel, table: ModelTable): HostObject => ({
  get: { Count: () => table.body.height },
  call: {
    Add: (index: number | null, values: (Cell | null)[][]): HostObject => {
      if (index !== null) throw new HostFault('InvalidArgument');
      const row = table.body.row + table.body.height;
      table.addRows(values, 'Local');
      const first = { ...table.place, row, height: 1 };
      return { call: { GetRange: () => rangeObject(model, table.sheet, first) } };
    },
  },
});

/** `Excel.Worksheet`. */
const sheetObject = (sheet: Sheet): HostObject => ({
  id: sheet.name,
  get: { Name: () => sheet.name },
  objects: { Protection: () => ({ get: { Protected: () => sheet.protected } }) },
});

/** `Excel.NamedItemCollection`. */
const namesObject = (model: WorkbookModel): HostObject => ({
  items: () =>
    [...model.names].map(([name, where]) => ({
      id: name,
      get: {
        Name: () => name,
        Visible: () => true,
        Formula: () => (typeof where === 'object' ? `='${where.sheet.name}'!A1` : where),
        Type: () => (typeof where === 'object' ? 'Range' : 'String'),
      },
      call: {
        GetRange: () => {
          if (typeof where !== 'object') throw new HostFault('InvalidArgument');
          return rangeObject(model, where.sheet, where.place);
        },
      },
    })),
  item: (key: string) => {
    const where = model.names.get(key);
    if (typeof where !== 'object') throw new HostFault('ItemNotFound');
    return { id: key, call: { GetRange: () => rangeObject(model, where.sheet, where.place) } };
  },
});

/** Where the client keeps whether the add-in starts together with the document. */
const persistence = (model: WorkbookModel): HostObject => ({
  call: {
    GetAppRuntimeStartState: () => model.startState,
    SetAppRuntimeStartState: (state: string) => {
      model.startState = state;
    },
  },
});

import { type ExcelSurroundings, excelPort } from '../../../../src/hosts/excel/excel-port.ts';
import { passingStore } from '../../../../src/hosts/excel/workbook-memory.ts';
import type { HostPort } from '../../../../src/workbook/port.ts';
import { demoBook } from './demo-book.ts';
import { ExcelHost } from './excel-host.ts';
import { type OfficeClient, officeClient } from './office-client.ts';
import type { WorkbookModel } from './workbook-model.ts';

/** A workbook open in the test's Excel, with the vendor's client before it and our port on top. */
export interface Opened {
  readonly model: WorkbookModel;
  readonly host: ExcelHost;
  readonly client: OfficeClient;
  readonly port: HostPort;
}

/** Opens a workbook, with what a test wants to differ around the port. */
export function open(
  model: WorkbookModel = demoBook(),
  around: Partial<ExcelSurroundings> = {},
): Opened {
  const host = new ExcelHost(model);
  const client = officeClient(host);
  const port = excelPort({
    run: (batch) => client.Excel.run(batch),
    workbookKey: 'a workbook',
    store: passingStore(),
    isReadOnly: () => false,
    now: () => new Date(2026, 10, 5, 23, 59),
    onDeaf: (sentence) => {
      throw new Error(sentence);
    },
    ...around,
  });
  return { model, host, client, port };
}

import type { Run } from '../../../../src/hosts/excel/apply-change.ts';
import { type ExcelSurroundings, excelPort } from '../../../../src/hosts/excel/excel-port.ts';
import { patientRun } from '../../../../src/hosts/excel/patient-run.ts';
import { passingStore } from '../../../../src/hosts/excel/passing-store.ts';
import type { HostPort } from '../../../../src/workbook/port.ts';
import { demoBook } from './demo-book.ts';
import { connect } from './connect.ts';
import { ExcelHost } from './excel-host.ts';
import { type OfficeClient, officeClient } from './office-client.ts';
import type { WorkbookModel } from './workbook-model.ts';

/** A workbook open in the test's Excel, with the vendor's client before it and our port on top. */
export interface Opened {
  readonly model: WorkbookModel;
  readonly host: ExcelHost;
  readonly client: OfficeClient;
  readonly run: Run;
  readonly runLater: Run;
  readonly port: HostPort;
}

/**
 * Opens a workbook, with what a test wants to differ around the port, in a page of its own or in one
 * whose client script has run already.
 */
export function open(
  model: WorkbookModel = demoBook(),
  around: Partial<ExcelSurroundings> = {},
  page?: OfficeClient,
): Opened {
  const host = new ExcelHost(model);
  const client = page ?? officeClient(host);
  if (page !== undefined) connect(page, host);
  const run = patientRun((batch) => client.Excel.run(batch), aMinute);
  const runLater: Run = (batch) => client.Excel.run({ delayForCellEdit: true }, batch);
  const port = excelPort({
    run,
    runLater,
    workbookKey: 'a workbook',
    store: passingStore(),
    isReadOnly: () => false,
    onRead: () => undefined,
    now: () => new Date(2026, 10, 5, 23, 59),
    onDeaf: (sentence) => {
      throw new Error(sentence);
    },
    ...around,
  });
  return { model, host, client, run, runLater, port };
}

/**
 * Client and host run in promises alone, so all that will happen has happened by the next turn of the
 * event loop. That is also the port's minute of waiting, and what follows on it takes another turn.
 */
export async function untilAllIsStill(): Promise<void> {
  await aMinute();
  await aMinute();
}

const aMinute = (): Promise<void> => new Promise((done) => setImmediate(done));

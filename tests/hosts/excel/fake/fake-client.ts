import type { Run } from '../../../../src/hosts/excel/apply-change.ts';
import { FakeNames } from './fake-names.ts';
import { FakeTables } from './fake-tables.ts';
import type { Queue } from './loaded.ts';
import { HostFault, type WorkbookModel } from './workbook-model.ts';

/** Where in the client's traffic a fault strikes, and with what code; the work before it is kept. */
export interface Fault {
  readonly sync: number;
  /** How many of that sync's operations are carried out first. */
  readonly after: number;
  readonly code: string;
}

type Operation = () => void;

/**
 * Stands in for Excel's client library: objects are proxies, nothing happens before `sync`, and a
 * property read before it was loaded and synced throws. Counts the syncs.
 */
export class FakeClient {
  readonly model: WorkbookModel;
  syncs = 0;
  /** The number of operations each sync carried. */
  readonly traffic: number[] = [];
  faults: Fault[] = [];
  /** Runs just before a sync is carried out: a partner at work in the same workbook. */
  beforeSync: (sync: number) => void = () => undefined;

  constructor(model: WorkbookModel) {
    this.model = model;
  }

  readonly run: Run = async (batch) => {
    const context = new FakeContext(this);
    return batch(context as unknown as Excel.RequestContext);
  };

  carryOut(operations: readonly Operation[]): void {
    this.syncs += 1;
    this.traffic.push(operations.length);
    this.beforeSync(this.syncs);
    const fault = this.faults.find(({ sync }) => sync === this.syncs);
    operations.slice(0, fault?.after).forEach((operation) => operation());
    if (fault !== undefined) throw new HostFault(fault.code);
  }
}

class FakeContext implements Queue {
  readonly client: FakeClient;
  readonly workbook: FakeWorkbook;
  #queue: Operation[] = [];

  constructor(client: FakeClient) {
    this.client = client;
    this.workbook = new FakeWorkbook(this);
  }

  get model(): WorkbookModel {
    return this.client.model;
  }

  queue(operation: Operation): void {
    this.#queue.push(operation);
  }

  async sync(): Promise<void> {
    const operations = this.#queue;
    this.#queue = [];
    await Promise.resolve();
    this.client.carryOut(operations);
  }
}

class FakeWorkbook {
  readonly tables: FakeTables;
  readonly names: FakeNames;
  readonly application: { calculate: (kind: string) => void };

  constructor(context: Queue) {
    this.tables = new FakeTables(context);
    this.names = new FakeNames(context);
    this.application = {
      calculate: (kind) => context.queue(() => context.model.recalculated.push(kind)),
    };
  }
}

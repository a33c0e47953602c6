import { type Batch, carryOut, type Session } from './batch.ts';
import type { ChangeEvent, WorkbookModel } from './workbook-model.ts';
import { rootObject } from './workbook-object.ts';

/** What the client hands over for one sync: two of its thirteen parts matter here, body and flags. */
type Message = readonly unknown[];

interface Reply {
  readonly status: 'succeeded' | 'failed';
  readonly value?: { readonly data: readonly [number, readonly string[], string] };
  readonly error?: { readonly code: number; readonly message: string };
}

/**
 * A fault at one sync, counted from 1. `wire` faults are of the way there or back, by Office's own
 * number, or no answer at all; with `after` they strike when the work is done. `action` faults are of
 * one action by an Excel code: what stands before it in the batch is done.
 */
export type Fault =
  | { readonly sync: number; readonly wire: number | 'silence'; readonly after?: boolean }
  | { readonly sync: number; readonly action: number; readonly code: string };

/** Office's own numbers (RichApiMessageUtility and Excel.RequestContext in the client script). */
export const WIRE = {
  internal: 5001,
  cellEdit: 5004,
  session: 5012,
  dialogOpen: 5016,
  throttled: 5102,
  requestTooLarge: 5103,
  responseTooLarge: 5104,
  noCapability: 7000,
} as const;

/**
 * Excel on the web hands over no more than this at once, either way:
 * https://learn.microsoft.com/office/dev/add-ins/concepts/resource-limits-and-performance-optimization
 */
export const MOST_BYTES = 5 * 1024 * 1024;

/** The flag of a sync that waits for the end of editing (`delayForCellEdit`). */
const DELAY_FOR_CELL_EDIT = 64;

/**
 * Excel as its client script knows it: it takes batches of JSON and answers them. What the vendor's
 * pages leave open is assumed, and was not held against a real Excel: a batch stops at its first fault
 * and keeps what it did; a kept range moves, grows and shrinks with its cells; an empty table has no
 * body to ask for; a filtered table refuses to be written; a new row moves down what stands below.
 */
export class ExcelHost {
  readonly model: WorkbookModel;
  /** The number of actions each sync carried, in order. */
  readonly traffic: number[] = [];
  /** Bytes of the largest batch or answer. */
  largest = 0;
  /** Batches by which the client lets go of ranges it held; a run sends one when it is done. */
  cleanups = 0;
  faults: readonly Fault[] = [];
  /** Runs just before a sync is carried out: a partner at work in the same workbook. */
  beforeSync: (sync: number) => void = () => undefined;
  /** Hears of changes once the client has registered for them. */
  onEvent: (event: ChangeEvent) => void = () => undefined;
  readonly registered = new Set<string>();
  readonly #session: Session;
  readonly #waiting: (() => void)[] = [];

  constructor(model: WorkbookModel) {
    this.model = model;
    this.#session = {
      root: (name) => rootObject(model, this.registered, name),
      kept: new Map(),
    };
    model.listeners.add((event) => {
      if (this.registered.has('tables changed')) this.onEvent(event);
    });
  }

  get syncs(): number {
    return this.traffic.length;
  }

  /** Ranges that the client still holds. */
  get held(): number {
    return this.#session.kept.size;
  }

  /** Stands where Office itself does: `OSF.DDA.RichApi.executeRichApiRequestAsync`. */
  receive(message: Message, reply: (answer: Reply) => void): void {
    const carryOn = (): void => {
      const answer = this.#answer(String(message[4]));
      if (answer !== 'silence') queueMicrotask(() => reply(answer));
    };
    const isPatient = (Number(message[6]) & DELAY_FOR_CELL_EDIT) !== 0;
    if (this.model.cellBeingEdited && isPatient) this.#waiting.push(carryOn);
    else carryOn();
  }

  /** The one who was typing in a cell has pressed Enter. */
  endEditing(): void {
    this.model.cellBeingEdited = false;
    for (const carryOn of this.#waiting.splice(0)) carryOn();
  }

  #answer(body: string): Reply | 'silence' {
    const batch = JSON.parse(body) as Batch;
    if (
      batch.Actions.every(({ ActionType, Name }) => ActionType === 1 || Name === '_RemoveReference')
    ) {
      this.cleanups += 1;
      return succeeded(carryOut(this.#session, batch));
    }
    this.traffic.push(batch.Actions.length);
    this.beforeSync(this.syncs);
    if (this.model.cellBeingEdited) return failed(WIRE.cellEdit);
    if (body.length > MOST_BYTES) return failed(WIRE.requestTooLarge);
    const fault = this.faults.find(({ sync }) => sync === this.syncs);
    if (fault !== undefined && 'wire' in fault && fault.after !== true) return failed(fault.wire);
    const stop = fault !== undefined && 'action' in fault ? fault : undefined;
    const answer = succeeded(carryOut(this.#session, batch, stop));
    if (fault !== undefined && 'wire' in fault) return failed(fault.wire);
    const size = answer.value?.data[2].length ?? 0;
    this.largest = Math.max(this.largest, body.length, size);
    return size > MOST_BYTES ? failed(WIRE.responseTooLarge) : answer;
  }
}

const succeeded = (answer: unknown): Reply => ({
  status: 'succeeded',
  value: { data: [200, [], JSON.stringify(answer)] },
});

const failed = (code: number | 'silence'): Reply | 'silence' =>
  code === 'silence'
    ? code
    : { status: 'failed', error: { code, message: "(Office's own wording)" } };

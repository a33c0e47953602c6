import { describe, expect, it } from 'vitest';
import { healBook } from '../../../src/hosts/excel/heal-book.ts';
import type { Applied } from '../../../src/workbook/port.ts';
import { type Flow, FLOWS } from './flows.ts';
import { ExcelHost, type Fault, WIRE } from './host/excel-host.ts';
import { bookCells, modelOf, withBookCells } from './host/model-of.ts';
import { officeClient } from './host/office-client.ts';
import { open, type Opened, untilAllIsStill } from './host/open.ts';

/** Ways in which a whole sync fails, in Office's own numbers. */
const WIRE_FAULTS: Readonly<Record<string, number | 'silence'>> = {
  'refuses it': WIRE.noCapability,
  'has lost the session': WIRE.session,
  'breaks off with an internal error': WIRE.internal,
  'is throttled': WIRE.throttled,
  'never answers': 'silence',
};

/** One page for all: its client script keeps nothing of a workbook once a run is over. */
const page = officeClient(new ExcelHost(modelOf({})));
const openFlow = ({ tables }: Flow): Opened => open(modelOf(tables), {}, page);

/** Writes the flow's change; an apply that throws says that it does not know. */
const write = ({ port }: Opened, { change }: Flow): Promise<Applied | 'unsure'> =>
  port.apply(change).catch((): 'unsure' => 'unsure');

interface Clean {
  readonly flow: Flow;
  readonly none: string;
  readonly whole: string;
  /** Actions of each sync, when nothing fails. */
  readonly traffic: readonly number[];
}

/** What each flow does where nothing fails; its outcome is held to one worked out without a host. */
async function cleanRun(flow: Flow): Promise<Clean> {
  const opened = openFlow(flow);
  const none = opened.model.contents();
  expect(await write(opened, flow)).toEqual({ kind: 'applied' });
  const whole = opened.model.contents();
  expect(whole).toBe(modelOf(flow.after).contents());
  return { flow, none, whole, traffic: [...opened.host.traffic] };
}

/** Every fault of one sync: of the wire before and after the work, and of each action in it. */
function faultsOf(sync: number, actions: number): Fault[] {
  const wire = Object.values(WIRE_FAULTS).flatMap((code): Fault[] => [
    { sync, wire: code },
    { sync, wire: code, after: true },
  ]);
  const action = Array.from({ length: actions }, (_, index): Fault => ({
    sync,
    action: index,
    code: 'GeneralException',
  }));
  return [...wire, ...action];
}

describe.each(FLOWS)('a fault while writing: $name', (flow) => {
  it('at any sync and any action leaves all or nothing, and says which', async () => {
    const { none, whole, traffic } = await cleanRun(flow);
    for (const [index, actions] of traffic.entries()) {
      for (const fault of faultsOf(index + 1, actions)) {
        const opened = openFlow(flow);
        opened.host.faults = [fault];
        const said = await write(opened, flow);
        const kind = said === 'unsure' ? said : said.kind;
        const now = opened.model.contents();
        const why = JSON.stringify(fault);
        expect(['applied', 'refused'], why).toContain(kind);
        expect(now === whole ? 'applied' : 'refused', why).toBe(kind);
        if (kind === 'refused') expect(now, why).toBe(none);
        expect(['applied', 'already there'], why).toContain(await kindOfNext(opened, flow));
        expect(opened.model.contents(), why).toBe(whole);
      }
    }
  });
});

describe('an answer that is lost on its way back', () => {
  it.each(FLOWS)('is found to be written: $name', async (flow) => {
    const { whole, traffic } = await cleanRun(flow);
    for (const wire of Object.values(WIRE_FAULTS)) {
      const opened = openFlow(flow);
      opened.host.faults = [{ sync: traffic.length, wire, after: true }];
      expect(await write(opened, flow)).toEqual({ kind: 'applied' });
      expect(opened.model.contents()).toBe(whole);
    }
  });
});

const kindOfNext = async (opened: Opened, flow: Flow): Promise<string> => {
  const said = await write(opened, flow);
  return said === 'unsure' ? said : said.kind;
};

const anyFault = (sync: number): Fault[] => faultsOf(sync, 1);

/** Healing and listening wait for as long as it takes: nobody waits for them. */
const answers = (fault: Fault): boolean => !('wire' in fault) || fault.wire !== 'silence';

describe('a fault while reading', () => {
  it('at any sync is a sentence, and reading again reads all', async () => {
    const clean = open();
    const tables = await clean.port.load();
    expect(clean.host.syncs).toBe(2);
    for (const fault of [1, 2].flatMap(anyFault)) {
      const { host, port } = open();
      host.faults = [fault];
      await expect(port.load(), JSON.stringify(fault)).rejects.toThrow(/^[A-Z].*(again|reopen)/);
      expect(await port.load()).toEqual(tables);
    }
  });
});

describe('a fault while healing', () => {
  it('at any sync is told of, and healing again heals', async () => {
    for (const fault of [1, 2].flatMap(anyFault).filter(answers)) {
      const { host, runLater, model } = healable();
      host.faults = [fault];
      await expect(healBook(runLater), JSON.stringify(fault)).rejects.toThrow();
      expect(await healBook(runLater)).toBe('answered');
      expect(bookCells(model)).toEqual({ handle: 'answered', onHand: 'answered' });
    }
  });
});

describe('a fault while asking to be told of changes', () => {
  it('of any kind is a sentence for the maker', async () => {
    for (const fault of anyFault(1).filter(answers)) {
      const said: string[] = [];
      const { host, port } = open(undefined, { onDeaf: (sentence) => said.push(sentence) });
      host.faults = [fault];
      const stop = port.onChange(() => undefined);
      await untilAllIsStill();
      expect(said, JSON.stringify(fault)).toHaveLength(1);
      stop();
    }
  });

  it('while stopping harms nothing', async () => {
    const { host, port } = open();
    const stop = port.onChange(() => undefined);
    await untilAllIsStill();
    host.faults = [{ sync: 2, wire: WIRE.internal }];
    stop();
    await untilAllIsStill();
    expect(host.syncs).toBe(2);
  });
});

function healable() {
  const model = withBookCells(modelOf({}), { handle: 'saved', onHand: 1 });
  model.calculation.answer = () => 'answered';
  return open(model, {}, page);
}

import { describe, expect, it } from 'vitest';
import { healthCheck } from '../../../src/domain/health/health-check.ts';
import { changeForRepair } from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { tableData } from '../../support/small-book.ts';
import { type Flow, FLOWS, TODAY } from './flows.ts';
import { ExcelHost, type Fault, WIRE } from './host/excel-host.ts';
import { modelOf, tablesOf } from './host/model-of.ts';
import { officeClient } from './host/office-client.ts';
import { open, type Opened } from './host/open.ts';

/** One page for all: its client script keeps nothing of a workbook once a run is over. */
const page = officeClient(new ExcelHost(modelOf({})));
const openFlow = ({ tables }: Flow): Opened => open(modelOf(tables), {}, page);

const write = async ({ port }: Opened, { change }: Flow): Promise<string> =>
  port.apply(change).then(
    ({ kind }) => kind,
    () => 'unsure',
  );

/** A half-written state, and the fault of the writing sync that leaves it. */
interface Half {
  readonly fault: Fault;
  readonly contents: string;
}

/** Every different state that the writing sync can break off in, each by one fault that leaves it. */
async function halvesOf(flow: Flow): Promise<{ readonly last: number; readonly halves: Half[] }> {
  const clean = openFlow(flow);
  await write(clean, flow);
  const last = clean.host.syncs;
  const halves = new Map<string, Half>();
  for (let action = 0; action < (clean.host.traffic.at(-1) ?? 0); action += 1) {
    const fault: Fault = { sync: last, action, code: 'GeneralException' };
    const opened = openFlow(flow);
    opened.host.faults = [fault];
    opened.host.beforeSync = (sync) => {
      const contents = opened.model.contents();
      if (sync === last + 1) halves.set(contents, { fault, contents });
    };
    await write(opened, flow);
  }
  return { last, halves: [...halves.values()] };
}

const SECOND: readonly ((sync: number) => Fault)[] = [
  (sync) => ({ sync, wire: WIRE.internal }),
  (sync) => ({ sync, wire: WIRE.throttled, after: true }),
  (sync) => ({ sync, wire: 'silence' }),
  (sync) => ({ sync, wire: 'silence', after: true }),
  (sync) => ({ sync, action: 0, code: 'AccessDenied' }),
];

describe.each(FLOWS)('a second fault, while looking what was kept: $name', (flow) => {
  it('is owned up to, and posting again completes the whole', async () => {
    const { last, halves } = await halvesOf(flow);
    const none = openFlow(flow).model.contents();
    const whole = modelOf(flow.after).contents();
    expect(halves.length).toBeGreaterThan(1);
    for (const { fault } of halves) {
      for (let sync = last + 1; sync <= last + 5; sync += 1) {
        for (const second of SECOND) {
          const opened = openFlow(flow);
          opened.host.faults = [fault, second(sync)];
          const said = await write(opened, flow);
          const now = opened.model.contents();
          const why = JSON.stringify(opened.host.faults);
          if (said === 'refused') expect(now, why).toBe(none);
          if (said === 'applied') expect(now, why).toBe(whole);
          opened.host.faults = [];
          expect(['applied', 'already there'], why).toContain(await write(opened, flow));
          expect(opened.model.contents(), why).toBe(whole);
        }
      }
    }
  });
});

/** What the health check finds, in a workbook that can be read. */
const findingsOf = (opened: Opened) => healthCheck(readTables(tablesOf(opened.model)), TODAY, '');

describe.each(FLOWS.filter(({ name }) => name === 'pour' || name === 'undo'))(
  'a half that stays: $name',
  (flow) => {
    it('is found by the health check, mended by appended lines, and never doubled', async () => {
      const { halves, last } = await halvesOf(flow);
      const clean = openFlow(flow);
      const before = findingsOf(clean).map(({ says }) => says);
      await write(clean, flow);
      expect(findingsOf(clean).map(({ says }) => says)).toEqual(before);
      const whole = clean.model.contents();
      const none = openFlow(flow).model.contents();
      const staying = halves.filter(({ contents }) => contents !== none && contents !== whole);
      expect(staying.length).toBeGreaterThan(0);
      for (const { fault } of staying) {
        const opened = openFlow(flow);
        opened.host.faults = [fault, { sync: last + 1, wire: WIRE.internal }];
        expect(await write(opened, flow)).toBe('unsure');
        opened.host.faults = [];
        const lines = opened.model.tables.map(({ rows }) => rows);
        await mend(opened);
        expect(findingsOf(opened).map(({ says }) => says)).toEqual(before);
        for (const [index, rows] of lines.entries()) {
          expect(opened.model.tables[index]?.rows.slice(0, rows.length)).toEqual(rows);
        }
        await write(opened, flow);
        const entries = opened.model.table('LedgerLines').rows.map(([entry]) => entry);
        expect(new Set(entries).size).toBe(entries.length);
      }
    });
  },
);

/** Agrees to one repair after another, each through the port, until none is offered. */
async function mend(opened: Opened): Promise<void> {
  for (let turn = 0; turn < 10; turn += 1) {
    const repair = findingsOf(opened).find((finding) => finding.repair !== undefined)?.repair;
    if (repair === undefined) return;
    const names = findTables(tableData(tablesOf(opened.model)));
    expect(await opened.port.apply(sure(changeForRepair(repair, names)))).toEqual({
      kind: 'applied',
    });
  }
}

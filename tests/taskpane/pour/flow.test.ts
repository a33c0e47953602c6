import { readDay } from '../../../src/domain/kernel/day.ts';
import { batchCode } from '../../../src/domain/book/batch-code.ts';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import type { Draft } from '../../../taskpane/pour/draft.ts';
import { pourTask } from '../../../taskpane/pour/pour-task.ts';
import { Flow } from '../../../taskpane/task/flow.ts';
import { Session } from '../../../taskpane/task/session.ts';
import { createMemoryPort, memoryOf, type MemoryPort } from '../../support/memory-port.ts';
import { smallWorkshop, withRows } from '../small-workshop.ts';

const READY: Partial<Draft> = { design: 'Harbour Light', bars: '6', step: 'preview' };

const newFlow = (port: MemoryPort): Flow<Draft> =>
  new Flow(pourTask, port, new Session(port), () => undefined);

/** A flow whose workbook has been read. */
async function openFlow(port: MemoryPort, told: Partial<Draft> = READY): Promise<Flow<Draft>> {
  const flow = newFlow(port);
  await flow.session.read();
  flow.tell(told);
  return flow;
}

const column = (port: MemoryPort, table: string, header: string): Cell[] => {
  const found = port.tables.find(({ name }) => name === table);
  const at = found?.headers.indexOf(header) ?? -1;
  return found?.rows.map((row) => row[at] ?? '') ?? [];
};
const batches = (port: MemoryPort) => column(port, 'Batches', 'Batch');
const codeOf = (token: string) => batchCode(readDay('2026-11-25') ?? 0, token);
const NEW = codeOf('abcdefghkmnprstx');

describe('recording', () => {
  it('writes the batch once and says so', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    await flow.record();
    expect(flow.draft.step).toBe('done');
    expect(flow.notice).toEqual({ kind: 'good', text: 'Written to LedgerLines and Batches.' });
    expect(batches(port)).toEqual(['B-OLD', NEW]);
    expect(new Set(column(port, 'LedgerLines', 'Entry')).size).toBe(
      column(port, 'LedgerLines', 'Entry').length,
    );
  });

  it('posts once when asked twice at the same time', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    const release = port.hold();
    const both = [flow.record(), flow.record()];
    expect(flow.busy).toBe('recording');
    release();
    await Promise.all(both);
    expect(port.asked).toHaveLength(1);
    expect(batches(port)).toEqual(['B-OLD', NEW]);
  });

  it('posts once when two panes hold the same draft', async () => {
    const memory = memoryOf(new Map());
    const port = createMemoryPort(smallWorkshop, { memory });
    const first = await openFlow(port);
    const second = await openFlow(port, {});
    await Promise.all([first.record(), second.record()]);
    expect(batches(port)).toEqual(['B-OLD', NEW]);
    expect([first.draft.step, second.draft.step]).toEqual(['done', 'done']);
  });

  it('posts once on the try after a refusal', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    port.nextApply({ kind: 'refuses', sentence: 'The sheet is protected.' });
    await flow.record();
    expect(flow.notice).toEqual({
      kind: 'bad',
      text: 'Nothing was written. The sheet is protected.',
    });
    expect([flow.busy, flow.draft.step]).toEqual([undefined, 'preview']);
    await flow.record();
    expect(batches(port)).toEqual(['B-OLD', NEW]);
  });

  it.each([
    ['breaks before', 'preview', 'bad'],
    ['breaks after', 'done', 'good'],
  ] as const)('when the host %s writing: step %s', async (kind, step, notice) => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    port.nextApply({ kind });
    await flow.record();
    expect([flow.draft.step, flow.notice?.kind, flow.draft.recording]).toEqual([
      step,
      notice,
      undefined,
    ]);
    if (step === 'preview') await flow.record();
    expect(batches(port)).toEqual(['B-OLD', NEW]);
    expect(port.written).toHaveLength(1);
  });

  it.each([1, 5, 14])(
    'adds the rest after %i lines were written and the pane reloaded',
    async (rows) => {
      const whole = createMemoryPort(smallWorkshop);
      await (await openFlow(whole)).record();
      const memory = memoryOf(new Map());
      const port = createMemoryPort(smallWorkshop, { memory });
      const flow = await openFlow(port);
      port.nextApply({ kind: 'breaks halfway', rows });
      await flow.record();
      expect(flow.isHalfWritten).toBe(true);
      const reloaded = newFlow(port);
      await reloaded.session.read();
      expect([reloaded.isHalfWritten, reloaded.draft.step]).toEqual([true, 'preview']);
      await reloaded.record();
      expect(reloaded.draft.step).toBe('done');
      expect(port.tables).toEqual(whole.tables);
    },
  );

  it('does not write what was not shown: a workbook changed unseen is looked over once more', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    const deaf = Object.assign(Object.create(port) as MemoryPort, {
      onChange: () => () => undefined,
    });
    const unaware = await openFlow(deaf);
    port.edit((tables) =>
      withRows(tables, 'Lots', (rows) =>
        rows.map((row) => (row[0] === 'L-1' ? row.with(4, 3.6) : row)),
      ),
    );
    await unaware.record();
    expect(unaware.notice?.text).toBe('The workbook changed meanwhile. Look it over once more.');
    expect(port.asked).toEqual([]);
    await unaware.record();
    expect(unaware.draft.step).toBe('done');
    flow.session.stop();
  });

  it('leaves a draft alone while it is written', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    const release = port.hold();
    const recording = flow.record();
    flow.tell({ good: '1' });
    release();
    await recording;
    expect(flow.draft.good).toBe('');
    expect(column(port, 'Batches', 'Good')).toEqual([6, 6]);
  });
});

describe('undoing', () => {
  it('brings every table’s stock back exactly, in opposite lines', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    const totals = () => {
      const sums = new Map<Cell, number>();
      const quantities = column(port, 'LedgerLines', 'Quantity');
      column(port, 'LedgerLines', 'Material').forEach((item, index) => {
        sums.set(item, (sums.get(item) ?? 0) + Math.round(Number(quantities[index]) * 1000));
      });
      return [...sums].filter(([, sum]) => sum !== 0);
    };
    const before = totals();
    await flow.record();
    expect(totals()).not.toEqual(before);
    await flow.undo(NEW);
    expect(totals()).toEqual(before);
    expect(column(port, 'Batches', 'State')).toEqual(['posted', 'undone']);
    await flow.undo(NEW);
    expect(flow.notice?.text).toMatch(/undone already/u);
    expect(totals()).toEqual(before);
  });

  it('is refused with a sentence where bars are gone', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port);
    await flow.record();
    port.edit((tables) =>
      withRows(tables, 'LedgerLines', (rows) => [
        ...rows,
        ['S-1', '2026-11-25', 'sold', 'Harbour Light', -2, '', -4, '', '', ''],
      ]),
    );
    await flow.undo(NEW);
    expect(flow.notice).toEqual({
      kind: 'bad',
      text: expect.stringMatching(
        /can't be undone, since \d+ of Harbour Light it gave are no longer in stock\./u,
      ),
    });
    expect(column(port, 'Batches', 'State')).toEqual(['posted', 'recorded']);
  });
});

describe('the draft', () => {
  it('survives a workbook that changes, and waits for a design that has gone', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port, {
      ...READY,
      good: '5',
      weighed: { 'Blue > Clear base': '70' },
    });
    port.edit((tables) =>
      tables.map((table) =>
        table.name === 'Designs' || table.name === 'Layers'
          ? { ...table, rows: table.rows.filter((row) => row[0] !== 'Harbour Light') }
          : table,
      ),
    );
    await flow.session.read();
    expect(flow.draft).toMatchObject({ good: '5', weighed: { 'Blue > Clear base': '70' } });
    await flow.record();
    expect(port.asked).toEqual([]);
  });

  it('has a new id for another pour', async () => {
    const port = createMemoryPort(smallWorkshop, { tokens: ['aaaaaaaaaa', 'bbbbbbbbbb'] });
    const flow = await openFlow(port);
    await flow.record();
    flow.another();
    expect(flow.draft).toMatchObject({ batch: codeOf('b'.repeat(10)), step: 'choose', design: '' });
    flow.tell(READY);
    await flow.record();
    expect(batches(port)).toEqual(['B-OLD', codeOf('a'.repeat(10)), codeOf('b'.repeat(10))]);
  });

  it('says when the host has no room to keep it', async () => {
    const full = memoryOf(new Map());
    const port = createMemoryPort(smallWorkshop, {
      memory: {
        ...full,
        set: () => {
          throw new Error('quota');
        },
      },
    });
    const flow = await openFlow(port);
    flow.another();
    expect(flow.draft.step).toBe('choose');
    await flow.record();
    expect(flow.busy).toBeUndefined();
  });
});

describe('short of stock', () => {
  it('refuses, then writes a counted line where the maker says the count is off', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port, { ...READY, bars: '60' });
    await flow.record();
    expect(port.asked).toEqual([]);
    flow.tell({ countIsOff: ['Clear base', 'Sweet orange'] });
    await flow.record();
    expect(flow.draft.step).toBe('done');
    expect(
      column(port, 'LedgerLines', 'Reason').filter((reason) => reason === 'counted'),
    ).toHaveLength(2);
  });
});

describe('a host that cannot be read', () => {
  it('says so, and goes on when it can', async () => {
    const port = createMemoryPort(smallWorkshop);
    let isDown = true;
    const shaky = Object.assign(Object.create(port) as MemoryPort, {
      load: () => (isDown ? Promise.reject(new Error('Excel is busy')) : port.load()),
    });
    const flow = newFlow(shaky);
    await flow.session.read();
    expect(flow.state).toEqual({ kind: 'failed', sentence: 'Excel is busy.' });
    isDown = false;
    await flow.session.read();
    expect(flow.state.kind).toBe('ready');
  });
});

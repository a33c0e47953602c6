import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { readTablesOf } from '../../../taskpane/read-workbook.ts';
import type { HostMemory, TableData } from '../../../src/workbook/port.ts';
import type { Draft } from '../../../taskpane/pour/draft.ts';
import { pouredAlike } from '../../../taskpane/pour/poured-alike.ts';
import { pourTask } from '../../../taskpane/pour/pour-task.ts';
import { postingOf } from '../../../taskpane/pour/record.ts';
import { Flow } from '../../../taskpane/task/flow.ts';
import { Session } from '../../../taskpane/task/session.ts';
import { createMemoryPort, memoryOf, type MemoryPort } from '../../support/memory-port.ts';
import { smallWorkshop, withRows } from '../small-workshop.ts';

const READY: Partial<Draft> = { design: 'Harbour Light', bars: '6', step: 'preview' };

async function openFlow(port: MemoryPort, told: Partial<Draft> = {}): Promise<Flow<Draft>> {
  const flow = new Flow(pourTask, port, new Session(port), () => undefined);
  await flow.session.read();
  if (Object.keys(told).length > 0) flow.tell(told);
  return flow;
}

/** The workshop as another's: its purchases and moves bear other ids. */
const anotherLedger: readonly TableData[] = smallWorkshop.map((table) =>
  table.name === 'Lots' || table.name === 'LedgerLines'
    ? { ...table, rows: table.rows.map((row) => [`other ${String(row[0])}`, ...row.slice(1)]) }
    : table,
);

describe('what is being written', () => {
  it('is safe before anything is written', async () => {
    const texts = new Map<string, string>();
    let safe = new Map<string, string>();
    const memory: HostMemory = {
      ...memoryOf(texts),
      kept: async () => {
        await Promise.resolve();
        safe = new Map(texts);
      },
    };
    const port = createMemoryPort(smallWorkshop, { memory });
    const atWriting: string[] = [];
    const watched = Object.assign(Object.create(port) as MemoryPort, {
      apply: (change: Parameters<MemoryPort['apply']>[0]) => {
        atWriting.push(...safe.values());
        return port.apply(change);
      },
    });
    const flow = await openFlow(watched, READY);
    await flow.record();
    expect(flow.draft.step).toBe('done');
    expect(atWriting.join()).toContain('recording');
    // The same texts are all that is left after the browser was killed just then.
    const later = createMemoryPort(port.tables, { memory: memoryOf(safe) });
    const reopened = await openFlow(later);
    expect([reopened.draft.step, reopened.notice]).toEqual([
      'done',
      { kind: 'good', text: pourTask.words.standing },
    ]);
  });

  it('is not written where the host cannot keep it', async () => {
    const memory: HostMemory = {
      ...memoryOf(new Map()),
      kept: () => Promise.reject(new Error('The disk is full')),
    };
    const port = createMemoryPort(smallWorkshop, { memory });
    const flow = await openFlow(port, READY);
    await flow.record();
    expect(port.asked).toEqual([]);
    expect(flow.notice).toEqual({ kind: 'bad', text: 'Nothing was written. The disk is full.' });
    expect([flow.draft.step, flow.draft.recording]).toEqual(['preview', undefined]);
  });
});

describe('a draft', () => {
  it('is not offered, nor written, over another ledger', async () => {
    const memory = memoryOf(new Map());
    await openFlow(createMemoryPort(smallWorkshop, { memory }), READY);
    const other = createMemoryPort(anotherLedger, { memory });
    const flow = await openFlow(other);
    expect([flow.draft.step, flow.draft.design]).toEqual(['choose', '']);
    expect(flow.notice?.text).toMatch(/belongs to another ledger/u);
    await flow.record();
    expect(other.asked).toEqual([]);
  });

  it('that is being written is not finished over another ledger either', async () => {
    const memory = memoryOf(new Map());
    const port = createMemoryPort(smallWorkshop, { memory });
    const flow = await openFlow(port, READY);
    port.nextApply({ kind: 'breaks halfway', rows: 1 });
    await flow.record();
    const other = createMemoryPort(anotherLedger, { memory });
    const elsewhere = await openFlow(other);
    await elsewhere.record();
    expect(other.asked).toEqual([]);
  });

  it.each([
    ['grown', (tables: readonly TableData[]) => withLine(tables)],
    ['with its newest lines taken out', (tables: readonly TableData[]) => withoutLast(tables)],
  ])('stays where the ledger is the same, %s', async (_what, change) => {
    const memory = memoryOf(new Map());
    await openFlow(createMemoryPort(smallWorkshop, { memory }), READY);
    const flow = await openFlow(createMemoryPort(change(smallWorkshop), { memory }));
    expect([flow.draft.step, flow.draft.bars]).toEqual(['preview', '6']);
    expect(flow.notice).toBeUndefined();
  });

  it('begun over a workbook that held nothing yet stays', async () => {
    const memory = memoryOf(new Map());
    const empty = smallWorkshop.map((table) =>
      table.name === 'Lots' || table.name === 'LedgerLines' ? { ...table, rows: [] } : table,
    );
    await openFlow(createMemoryPort(empty, { memory }), READY);
    const flow = await openFlow(createMemoryPort(smallWorkshop, { memory }));
    expect(flow.draft.bars).toBe('6');
  });

  it.each(['', '{', '{"ledger":[1],"text":""}', '{"ledger":[]}'])(
    'is begun anew where what was kept is none: %s',
    async (text) => {
      const memory = memoryOf(new Map([[pourTask.key, text]]));
      const flow = await openFlow(createMemoryPort(smallWorkshop, { memory }));
      expect(flow.draft.step).toBe('choose');
    },
  );
});

const withLine = (tables: readonly TableData[]) =>
  withRows(tables, 'LedgerLines', (rows) => [
    ...rows,
    ['M-9', '2026-11-20', 'used', 'Wrapper', -1, 'L-8', -0.15, '', '', ''],
  ]);

const withoutLast = (tables: readonly TableData[]) =>
  ['LedgerLines', 'Lots'].reduce(
    (all, name) => withRows(all, name, (rows) => (name === 'LedgerLines' ? [] : rows.slice(0, 7))),
    tables,
  );

describe('a second pour alike', () => {
  const alike = (tables: readonly TableData[], draft: Partial<Draft>) => {
    const read = readTablesOf(tables);
    if (read.kind !== 'ready') throw new Error(read.kind);
    const full = { ...pourTask.fresh(createMemoryPort(tables)), ...draft };
    const posting = postingOf({ ...read, tables }, full, {
      today: readDay('2026-11-25') ?? 0,
      by: '',
    });
    if (!posting.ok) throw new Error(posting.failure.sentence);
    if (posting.value.kind !== 'ready') throw new Error('Stock is short.');
    return pouredAlike(read.book, posting.value.posting.batch).map(({ batch }) => batch);
  };

  it('is told by design, day and bars, and not once it was undone', async () => {
    const port = createMemoryPort(smallWorkshop);
    const flow = await openFlow(port, READY);
    await flow.record();
    const first = flow.draft.batch;
    const second = { ...READY, batch: 'B-SECOND', useLeftovers: false };
    expect(alike(port.tables, second)).toEqual([first]);
    expect(alike(port.tables, { ...second, bars: '5' })).toEqual([]);
    expect(alike(port.tables, { ...second, poured: '2026-11-24' })).toEqual([]);
    expect(alike(port.tables, { ...second, design: 'Plain Wave', lost: '1' })).toEqual([]);
    await flow.undo(first);
    expect(alike(port.tables, second)).toEqual([]);
  });
});

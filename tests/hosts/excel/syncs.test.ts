import { describe, expect, it } from 'vitest';
import { demoBook, post } from './host/demo-book.ts';
import { open, type Opened } from './host/open.ts';

const SIZES = [1, 100, 1_000, 10_000] as const;

/** What a piece of work cost: actions of each sync, and batches that only let go of ranges. */
async function costOf({ host }: Opened, work: () => Promise<unknown>) {
  const before = { syncs: host.syncs, cleanups: host.cleanups };
  await work();
  // Nothing is held on to once a run is over, so Excel has nothing left to follow.
  expect(host.held).toBe(0);
  return {
    syncs: host.syncs - before.syncs,
    cleanups: host.cleanups - before.cleanups,
    actions: host.traffic.slice(before.syncs),
  };
}

describe('the syncs it takes', () => {
  it.each(SIZES)('to post a batch of %i moves', async (moves) => {
    const opened = open();
    const { syncs, cleanups } = await costOf(opened, () => opened.port.apply(post(moves)));
    expect({ syncs, cleanups }).toEqual({ syncs: 5, cleanups: 1 });
  });

  it.each(SIZES)('to post a batch of %i moves that changes no row', async (moves) => {
    const opened = open();
    const cost = await costOf(opened, () => opened.port.apply({ ...post(moves), updates: [] }));
    expect(cost.syncs).toBe(4);
  });

  it.each(SIZES)('to find that a batch of %i moves stands already', async (moves) => {
    const opened = open();
    await opened.port.apply(post(moves));
    const cost = await costOf(opened, () => opened.port.apply(post(moves)));
    expect(cost.syncs).toBe(4);
  });

  it.each(SIZES)('to take back a batch of %i moves that broke off', async (moves) => {
    // A wider table right below Batches: the moves go in, and the batch's line then does not.
    const opened = open(
      demoBook().addTable('Wide', ['A', 'B', 'C', 'D', 'E'], [], {
        sheet: 'Batches sheet',
        row: 5,
      }),
    );
    const none = opened.model.contents();
    const { syncs } = await costOf(opened, () => opened.port.apply(post(moves)));
    // Five, four to look again, one to take back.
    expect(syncs).toBe(10);
    expect(opened.model.contents()).toBe(none);
  });

  it('carry as many actions for 10,000 moves as for one', async () => {
    const costs = [];
    for (const moves of [1, 10_000]) {
      const opened = open();
      costs.push(await costOf(opened, () => opened.port.apply(post(moves))));
    }
    expect(costs[1]).toEqual(costs[0]);
  });
});

describe('what Excel on the web takes at once', () => {
  it('is room enough for 10,000 moves as the pane writes them', async () => {
    const { host, port } = open();
    const rows = Array.from({ length: 10_000 }, (_, index) => ({
      Entry: `B20261125-7KQ2M9XD4R.${index}`,
      When: 46_001,
      Material: 'Evening lavender colourant leftover',
      Quantity: -1234.567,
      Note: `B20261125-7KQ2M9XD4R.${index}`,
    }));
    const change = { appends: [{ table: 'Moves', idColumn: 'Entry', rows }], updates: [] };
    expect(await port.apply(change)).toEqual({ kind: 'applied' });
    expect(host.largest).toBeLessThan(5 * 1024 * 1024);
  });

  it('is never an id column of more than 75,000 rows', async () => {
    const { model, host, port } = open();
    // Longer ids than any of ours; all of them at once are more than 5 MB.
    const ids = Array.from({ length: 160_000 }, (_, row) => `B20261125-7KQ2M9XD4R.${row}.R`);
    const rows = ids.map((id) => [id, 46_000, 'Clear base', -1, '']);
    model.table('Moves').lay(rows);
    expect(await port.apply(post(1))).toEqual({ kind: 'applied' });
    // Five, and two more for the second and third part of the ids.
    expect(host.syncs).toBe(7);
    const last = { table: 'Moves', idColumn: 'Entry', id: ids.at(-1) ?? '', set: { Note: 'x' } };
    expect(await port.apply({ appends: [], updates: [last] })).toEqual({ kind: 'applied' });
    expect(model.table('Moves').rows[160_000]?.[4]).toBe('x');
  });

  it('hands over ids in parts of which none slips through when a row above is taken out', async () => {
    const { model, host, port } = open();
    const change = { ...post(1), updates: [] };
    const others = Array.from({ length: 74_999 }, (_, row) => [`m-${row}`, 46_000, '', -1, '']);
    model.table('Moves').lay(others);
    // The first row of the second part.
    expect(await port.apply(change)).toEqual({ kind: 'applied' });
    const first = host.syncs;
    host.beforeSync = (sync) => {
      if (sync === first + 4) model.table('Moves').deleteRows(0, 1, 'Remote');
    };
    expect(await port.apply(change)).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(/Rows of Moves were moved.*try again/) as string,
    });
    expect(model.table('Moves').rows.filter(([id]) => id === 'p-0')).toHaveLength(1);
  });

  it('refuses more whole, with a sentence', async () => {
    const { model, port } = open();
    const none = model.contents();
    expect(await port.apply(post(200_000))).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(/more than Excel takes in one go/) as string,
    });
    expect(model.contents()).toBe(none);
  });
});

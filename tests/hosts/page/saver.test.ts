import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Changes } from '../../../src/hosts/workbench/page/changes.ts';
import { createSaver } from '../../../src/hosts/workbench/page/saver.ts';
import type { SheetCells } from '../../../src/hosts/workbench/page/sheet-cells.ts';
import type { SaveAnswer } from '../../../src/xlsx/image.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A saver whose formulas come to rest when told to, and whose cells are typed by the test. */
function bench(answer: (version: number) => SaveAnswer) {
  let typed = 0;
  let saves = 0;
  let told: () => void = () => undefined;
  let rest: () => void = () => undefined;
  let atRest: Promise<void> = Promise.resolve();
  /** How many cells each save held. */
  const held: number[] = [];
  const changes: Changes = {
    get isWaiting() {
      return typed > 0;
    },
    onChange(listener) {
      told = listener;
    },
    typed: () => [],
    take() {
      const taken = typed;
      held.push(taken);
      typed = 0;
      return {
        edits: [],
        saved: () => undefined,
        returned: () => {
          typed += taken;
        },
      };
    },
  };
  const server: Parameters<typeof createSaver>[2] = {
    save: () => Promise.resolve(answer((saves += 1))),
    look: () => Promise.resolve(undefined),
    sendLast: () => undefined,
    connection: {
      isOpen: true,
      onChange: () => undefined,
      onNews: () => undefined,
      onBackups: () => undefined,
      end: () => undefined,
      opened: () => Promise.resolve(),
    },
  };
  const sheets = { worksOut: true, settled: () => atRest } as SheetCells;
  const saver = createSaver(sheets, changes, server, 'v0', () => 'id');
  return {
    saver,
    held,
    type() {
      typed += 1;
      told();
    },
    /** The formulas answer on and on, until what comes back is called. */
    busy() {
      atRest = new Promise((resolve) => {
        rest = resolve;
      });
      return () => {
        rest();
        atRest = Promise.resolve();
      };
    },
  };
}

const saved = (version: number): SaveAnswer => ({ kind: 'saved', version: String(version) });
const seconds = (count: number) => vi.advanceTimersByTimeAsync(count * 1_000);

it('saves typed cells once, after a pause', async () => {
  const { type, held, saver } = bench(saved);
  type();
  await seconds(0.5);
  type();
  await seconds(0.5);
  expect(held).toEqual([]);
  await seconds(1);
  expect(held).toEqual([2]);
  await seconds(60);
  expect(held).toEqual([2]);
  expect(saver.state).toEqual({ kind: 'saved' });
});

it('saves typed cells while one types on without a pause', async () => {
  const { type, held } = bench(saved);
  for (let cell = 0; cell < 40; cell += 1) {
    type();
    await seconds(0.5);
  }
  expect(held.length).toBeGreaterThanOrEqual(3);
});

it('saves typed cells while formulas don’t come to rest, and their answers once they do', async () => {
  const { type, held, busy, saver } = bench(saved);
  const rest = busy();
  type();
  await seconds(7);
  expect(held).toEqual([1]);
  type();
  await seconds(12);
  expect(held).toEqual([1, 1]);
  await seconds(60);
  expect(held).toEqual([1, 1]);
  rest();
  await seconds(6);
  expect(held).toEqual([1, 1, 0]);
  expect(saver.state).toEqual({ kind: 'saved' });
});

it('lets what must be in the file wait for every answer', async () => {
  const { type, held, busy, saver } = bench(saved);
  const rest = busy();
  type();
  const done = saver.saveNow();
  await seconds(60);
  expect(held).toEqual([]);
  rest();
  await done;
  expect(held).toEqual([1]);
});

it('writes nothing more, and waits for nothing, once the file was changed outside', async () => {
  const { type, held, busy } = bench(() => ({ kind: 'changed outside', version: 'v9' }));
  busy();
  type();
  await seconds(60);
  type();
  await seconds(60);
  expect(held).toEqual([1]);
  expect(vi.getTimerCount()).toBe(0);
});

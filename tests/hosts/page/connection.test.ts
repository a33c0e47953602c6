import type { Dialog } from 'playwright-core';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Change, HostPort } from '../../../src/workbook/port.ts';
import { isOpen, type OpenPage, useOpenPage } from './open-page.ts';

const openPage = useOpenPage();
let open: OpenPage;

beforeEach(async () => {
  open = await openPage();
});

const used: Change = {
  appends: [
    {
      table: 'Moves',
      idColumn: 'Entry',
      rows: [{ Entry: 'M-2', Reason: 'used', Quantity: -40 }],
    },
  ],
  updates: [],
};

/** What the saves wrote into Ledger!D2, in order. */
const written = () =>
  open.server.saves.flatMap(({ edits }) =>
    edits
      .filter(({ sheet }) => sheet === 'Ledger')
      .flatMap(({ cells }) => cells.filter(({ row, column }) => row === 1 && column === 3))
      .map(({ value }) => value),
  );

const keep = () => open.page.getByRole('button', { name: 'Keep my cells as a text file' });

describe('a server that ends', () => {
  it('is told of, and what was typed is saved once it is back', async () => {
    const comeBack = open.server.goDown();
    await open.saysSaved('Not connected');
    expect(await keep().isVisible()).toBe(false);
    await open.type('Ledger', 'D2', '-7');
    await open.saysSaved('Not connected, not saved');
    await keep().waitFor();
    comeBack();
    await open.saysSaved();
    expect(written()).toEqual([-7]);
    expect(await keep().isVisible()).toBe(false);
  });

  it('before it answered a save is asked again, and saves once', async () => {
    open.server.loseAnswer();
    await open.type('Ledger', 'D2', '-7');
    await open.saysSaved();
    await open.type('Ledger', 'D2', '-8');
    await open.saysSaved();
    expect(written()).toEqual([-7, -8]);
  });

  it('before it answered what the pane writes lets it wait, and writes once', async () => {
    open.server.loseAnswer();
    expect(await open.apply(used)).toEqual({ kind: 'applied' });
    expect(open.server.saves).toHaveLength(1);
  });

  it('lets the pane write nothing, nor keep a draft and say so', async () => {
    const comeBack = open.server.goDown();
    await open.saysSaved('Not connected');
    expect(await open.apply(used)).toMatchObject({ kind: 'refused' });
    const said = await open.page.evaluate(async () => {
      const { port } = document.querySelector('test-pane') as unknown as { port: HostPort };
      port.memory.set('flow', 'step 3');
      return port.memory.kept().then(
        () => 'kept',
        (problem: unknown) => String(problem),
      );
    });
    expect(said).toMatch(/The workbench does not answer/);
    comeBack();
    await expect.poll(() => open.server.texts.get('flow')).toBe('step 3');
    expect(await open.apply(used)).toEqual({ kind: 'applied' });
  });

  it('and comes back with another file is told of as such', async () => {
    const comeBack = open.server.goDown();
    await open.saysSaved('Not connected');
    await open.type('Ledger', 'D2', '-7');
    open.server.changeOutside(true);
    comeBack();
    await open.page.getByText(/drops your cells/).waitFor();
    await keep().waitFor();
    expect(open.server.saves).toEqual([]);
  });
});

describe('a file that is gone or damaged', () => {
  it('is told of though nothing is typed, and is well again once it is back', async () => {
    open.server.lose({ kind: 'lost', sentence: 'The file is not there.', backup: Date.now() });
    await open.saysSaved('Not saved: The file is not there.');
    await open.page.getByRole('button', { name: /^Go back to the backup of \d/ }).waitFor();
    open.server.lose(undefined);
    await open.saysSaved();
  });
});

describe('a program that saved into what this page had replaced', () => {
  const until = Date.UTC(2026, 10, 28, 12, 3);
  const path = '/home/a/book.backups/2026-11-28T12.03.00Z.xlsx';
  const said = () =>
    open.page.getByText(/^Another program still had open what this file was until/);
  const choose = (name: string) => open.page.getByRole('button', { name }).click();

  it('is told of beside what is saved, with where that is, until the maker stays with this', async () => {
    open.server.writeInto({ until, path });
    await said().waitFor();
    expect(await said().textContent()).toContain(`but in ${path}.`);
    await open.saysSaved();
    await choose('Stay with this');
    await expect
      .poll(() => open.server.backupsAsked)
      .toEqual([`api/leave-backup {"until":${String(until)}}`]);
    open.server.writeInto(undefined);
    await said().waitFor({ state: 'hidden' });
  });

  it('is no news of a server that was started again and knows nothing of it', async () => {
    open.server.writeInto({ until, path });
    await said().waitFor();
    const comeBack = open.server.goDown();
    open.server.writeInto(undefined);
    comeBack();
    await said().waitFor({ state: 'hidden' });
  });

  it('can be followed: its state is taken and shown', async () => {
    open.server.writeInto({ until, path });
    await said().waitFor();
    await Promise.all([open.page.waitForEvent('load'), choose('Go over to what it saved')]);
    expect(open.server.backupsAsked).toEqual([`api/take-backup {"until":${String(until)}}`]);
  });

  it('can be followed with cells unsaved: they stay to be kept', async () => {
    open.server.writeInto({ until, path });
    await said().waitFor();
    open.server.refuse('The disk is full.');
    await open.type('Ledger', 'D2', '-7');
    await open.saysSaved('Not saved: The disk is full.');
    await choose('Go over to what it saved');
    await expect.poll(() => open.server.backupsAsked).toHaveLength(1);
    open.server.changeOutside();
    await open.page.getByText(/drops your cells/).waitFor();
    await keep().waitFor();
  });
});

describe('leaving', () => {
  /** Goes elsewhere and says what the browser asked, answering it that way. */
  async function leave(answer: 'accept' | 'dismiss'): Promise<string[]> {
    const asked: string[] = [];
    const hear = (dialog: Dialog) => {
      asked.push(dialog.type());
      void dialog[answer]();
    };
    open.page.on('dialog', hear);
    await open.page.goto(`${open.server.address}elsewhere`).catch(() => undefined);
    open.page.off('dialog', hear);
    return asked;
  }

  it('while a cell waits to be saved loses nothing', async () => {
    await open.select('Ledger', 'D2');
    await open.page.keyboard.type('-7');
    await open.page.keyboard.press('Enter');
    expect(await leave('accept')).toEqual(['beforeunload']);
    await expect.poll(written).toEqual([-7]);
    expect(open.server.saves.at(-1)?.after).toBeUndefined();
  });

  it('asks first where a cell is being typed in', async () => {
    await open.select('Ledger', 'D2');
    await open.page.keyboard.type('-7');
    expect(await leave('dismiss')).toEqual(['beforeunload']);
    await open.page.keyboard.press('Enter');
    await open.saysSaved();
    expect(written()).toEqual([-7]);
    expect(await leave('accept')).toEqual([]);
  });
});

it('finds what the pane kept after the browser was killed', async () => {
  await open.page.evaluate(async () => {
    const { port } = document.querySelector('test-pane') as unknown as { port: HostPort };
    port.memory.set('flow', 'step 2');
    await port.memory.kept();
  });
  // Another context knows nothing of what the first left in its browser.
  const context = await open.page.context().browser()?.newContext();
  const page = await context?.newPage();
  if (page === undefined) throw new Error('The browser gave no page.');
  await page.goto(open.server.address);
  await isOpen(page);
  const kept = await page.evaluate(() =>
    (document.querySelector('test-pane') as unknown as { port: HostPort }).port.memory.get('flow'),
  );
  expect(kept).toBe('step 2');
  await context?.close();
});

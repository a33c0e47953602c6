import { beforeEach, describe, expect, it } from 'vitest';
import { type OpenPage, useOpenPage } from './open-page.ts';

const openPage = useOpenPage();
let open: OpenPage;
beforeEach(async () => {
  open = await openPage();
});

const isMarked = (cell: string): Promise<boolean> =>
  open.page.evaluate(
    (at) => window.pourLedgerWorkbench?.isMarked('Odds & ends', at) ?? false,
    cell,
  );

describe('the corner of a cell with a list', () => {
  it.each([
    ['a table’s column', 'C2'],
    ['formulas on a hidden sheet', 'E2'],
  ])('goes once the name stands in %s', async (_, cell) => {
    await open.type('Odds & ends', cell, 'ladle');
    await expect.poll(() => isMarked(cell)).toBe(true);
    await open.type('Odds & ends', 'A4', 'ladle');
    await expect.poll(() => isMarked(cell)).toBe(false);
  });

  it.each(['C2', 'E2'])('never comes where the name stood there first: %s', async (cell) => {
    await open.type('Odds & ends', 'A4', 'ladle');
    await open.type('Odds & ends', cell, 'ladle');
    await expect.poll(() => isMarked(cell)).toBe(false);
  });

  it.each([
    ['a name in other capital letters', 'C2', 'JUG', false],
    ['another name', 'C2', 'jar', true],
  ])('goes by what BOOK takes: %s', async (_, cell, typed, marked) => {
    await open.type('Odds & ends', cell, typed);
    await expect.poll(() => isMarked(cell)).toBe(marked);
  });
});

import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenPage, useOpenPage } from './open-page.ts';

const openPage = useOpenPage();
let open: OpenPage;
const openAnew = async () => {
  open = await openPage();
};

const isMarked = (cell: string): Promise<boolean> =>
  open.page.evaluate(
    (at) => window.pourLedgerWorkbench?.isMarked('Odds & ends', at) ?? false,
    cell,
  );

/** A list of a table's column, and one of formulas on a hidden sheet. */
const LISTED = ['C2', 'E2'];

describe('the corner of a cell with a list', () => {
  beforeAll(openAnew);

  it.each([
    ['a name in other capital letters', 'C2', 'JUG', false],
    ['another name', 'C2', 'jar', true],
  ])('goes by what BOOK takes: %s', async (_, cell, typed, marked) => {
    await open.type('Odds & ends', cell, typed);
    await expect.poll(() => isMarked(cell)).toBe(marked);
  });

  it('goes once the name stands in what is listed', async () => {
    for (const cell of LISTED) {
      await open.type('Odds & ends', cell, 'ladle');
      await expect.poll(() => isMarked(cell)).toBe(true);
    }
    await open.type('Odds & ends', 'A4', 'ladle');
    for (const cell of LISTED) await expect.poll(() => isMarked(cell)).toBe(false);
  });
});

describe('the corner of a cell whose name stood in the list first', () => {
  beforeAll(openAnew);

  it('never comes', async () => {
    await open.type('Odds & ends', 'A4', 'ladle');
    for (const cell of LISTED) {
      await open.type('Odds & ends', cell, 'ladle');
      await expect.poll(() => isMarked(cell)).toBe(false);
    }
  });
});

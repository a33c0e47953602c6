import { beforeAll, expect, it } from 'vitest';
import { type OpenPage, useOpenPage } from './open-page.ts';

const openPage = useOpenPage();
let open: OpenPage;
beforeAll(async () => {
  open = await openPage();
});

it.each(['3.4.26', '3/4/26', 'April 13', '4/4/26'])(
  'keeps %s as the text it was typed, for it may be another day',
  async (typed) => {
    await open.type('Ask', 'E1', typed);
    expect(await open.values('Ask', 'E1')).toEqual([[typed]]);
    await open.saysSaved();
    expect(open.server.saves.at(-1)?.edits[0]?.cells).toContainEqual({
      row: 0,
      column: 4,
      value: typed,
    });
  },
);

it.each([
  // 3 April 2026 is day 46115 since 30 Dec 1899.
  ['2026-04-03', 46115],
  ['3.4', 3.4],
  ['$9', 9],
])('takes %s as the host does', async (typed, value) => {
  await open.type('Ask', 'E2', typed);
  expect(await open.values('Ask', 'E2')).toEqual([[value]]);
});

import { expect, it } from 'vitest';
import type { FileNews } from '../../../src/hosts/workbench/protocol.ts';
import { type Occasion, tellOfFile } from '../../../src/hosts/workbench/server/tell-of-file.ts';

const stands: FileNews = { kind: 'stands', version: 'v' };
const lost: FileNews = { kind: 'lost', sentence: 'It is gone.' };

it.each<[string, readonly (readonly [FileNews, Occasion])[], readonly FileNews[]]>([
  ['tells what stands there at once', [[stands, 'move']], [stands]],
  [
    'says nothing of a file that another program is just writing',
    [
      [lost, 'move'],
      [lost, 'move'],
      [stands, 'move'],
    ],
    [stands],
  ],
  [
    'tells that it is lost once the clock finds it so again',
    [
      [lost, 'move'],
      [lost, 'clock'],
      [stands, 'move'],
    ],
    [lost, stands],
  ],
  [
    'tells it on a folder that announces nothing',
    [
      [lost, 'clock'],
      [lost, 'clock'],
    ],
    [lost],
  ],
  [
    'begins to count anew after it stood there',
    [
      [lost, 'clock'],
      [stands, 'clock'],
      [lost, 'clock'],
    ],
    [stands],
  ],
])('%s', async (_what, looks, told) => {
  const heard: FileNews[] = [];
  let now: FileNews = stands;
  const look = tellOfFile(
    () => Promise.resolve(now),
    (news) => {
      heard.push(news);
    },
  );
  for (const [news, occasion] of looks) {
    now = news;
    await look(occasion);
  }
  expect(heard).toEqual(told);
});

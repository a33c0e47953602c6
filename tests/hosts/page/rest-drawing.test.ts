import type { CDPSession } from 'playwright-core';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type OpenPage, useOpenPage } from './open-page.ts';

const openPage = useOpenPage();
let open: OpenPage;
let devTools: CDPSession;
beforeAll(async () => {
  open = await openPage();
  devTools = await open.page.context().newCDPSession(open.page);
});
afterEach(() => {
  expect(open.complaints).toEqual([]);
});

describe('a grid in which nothing changes', () => {
  it('asks for no frames', async () => {
    await open.select('Ask', 'A1');
    expect(await comesToRest()).toBe(true);
  });

  it('asks for none after a cell was open with its list', async () => {
    await open.select('Odds & ends', 'C2');
    await open.page.keyboard.press('F2');
    const list = open.page.locator('[data-u-comp=sheets-dropdown-list]');
    await list.waitFor();
    await open.page.keyboard.press('Escape');
    await open.select('Ask', 'A1');
    await list.waitFor({ state: 'hidden' });
    expect(await comesToRest()).toBe(true);
  });

  it('draws again whatever then changes', async () => {
    await open.select('Ask', 'A1');
    expect(await comesToRest()).toBe(true);
    const steps: (readonly [string, () => Promise<unknown>])[] = [
      ['the selection', () => open.page.keyboard.press('ArrowDown')],
      ['what is typed', () => open.page.keyboard.type('7')],
      ['the cell left', () => open.page.keyboard.press('Enter')],
      ['a scroll', () => open.page.mouse.wheel(0, 100)],
      ['the colours', () => open.page.emulateMedia({ colorScheme: 'dark' })],
      ['another sheet', () => open.select('Looks', 'A1')],
      ['the size', () => open.page.setViewportSize({ width: 1000, height: 700 })],
    ];
    const grid = open.page.locator('[id^=univer-sheet-main-canvas]');
    const box = await grid.boundingBox();
    await open.page.mouse.move((box?.x ?? 0) + 200, (box?.y ?? 0) + 200);
    let before = await pixels();
    for (const [what, step] of steps) {
      await step();
      await expect.poll(pixels, { message: what }).not.toBe(before);
      expect(await comesToRest(), what).toBe(true);
      before = await pixels();
    }
    await open.page.setViewportSize({ width: 1280, height: 800 });
    await open.page.emulateMedia({ colorScheme: null });
  });
});

it('holds no more listeners after many keys than after some', async () => {
  await open.select('Ask', 'B3');
  await walk(10);
  const some = await listeners();
  await walk(100);
  // One left behind by each key would be 200.
  expect((await listeners()) - some).toBeLessThan(50);
});

/** Goes down and up again. */
async function walk(times: number): Promise<void> {
  for (let step = 0; step < times; step += 1) {
    await open.page.keyboard.press('ArrowDown');
    await open.page.keyboard.press('ArrowUp');
  }
}

async function listeners(): Promise<number> {
  await devTools.send('Performance.enable');
  await devTools.send('HeapProfiler.collectGarbage');
  const { metrics } = await devTools.send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'JSEventListeners')?.value ?? NaN;
}

/** Whether, before long, a hundred timers of the page end with no frame asked for. */
const comesToRest = (): Promise<boolean> =>
  open.page.evaluate(async () => {
    const ask = window.requestAnimationFrame;
    let asked = 0;
    window.requestAnimationFrame = (draw) => {
      asked += 1;
      return ask.call(window, draw);
    };
    let quiet = 0;
    for (let timer = 0; timer < 1_000 && quiet < 100; timer += 1) {
      const before = asked;
      await new Promise((resolve) => setTimeout(resolve));
      quiet = asked === before ? quiet + 1 : 0;
    }
    window.requestAnimationFrame = ask;
    return quiet === 100;
  });

const pixels = async (): Promise<string> =>
  (await open.page.locator('#grid').screenshot()).toString('base64');

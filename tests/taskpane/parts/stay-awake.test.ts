import { afterEach, expect, it, vi } from 'vitest';
import { StayAwake } from '../../../taskpane/parts/stay-awake.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

/** A page that can be left and looked at again, in a browser that counts the locks it holds. */
function browser(wakeLock: 'given' | 'forbidden' | 'unknown') {
  const page = Object.assign(new EventTarget(), { hidden: false });
  const locks = new Set<object>();
  const request = () => {
    if (wakeLock === 'forbidden') return Promise.reject(new Error('Not allowed.'));
    const lock = {
      release: () => {
        locks.delete(lock);
        return Promise.resolve();
      },
    };
    locks.add(lock);
    return Promise.resolve(lock);
  };
  vi.stubGlobal('document', page);
  vi.stubGlobal('navigator', wakeLock === 'unknown' ? {} : { wakeLock: { request } });
  const step = new StayAwake({
    addController: () => undefined,
    removeController: () => undefined,
    requestUpdate: () => undefined,
    updateComplete: Promise.resolve(true),
  });
  return {
    step,
    held: () => locks.size,
    leave() {
      page.hidden = true;
      locks.clear();
      page.dispatchEvent(new Event('visibilitychange'));
    },
    comeBack() {
      page.hidden = false;
      page.dispatchEvent(new Event('visibilitychange'));
    },
  };
}

const soon = () => new Promise((resolve) => setImmediate(resolve));

it('keeps the screen awake while the step is shown, and no longer', async () => {
  const { step, held } = browser('given');
  step.hostConnected();
  await soon();
  expect(held()).toBe(1);
  step.hostDisconnected();
  await soon();
  expect(held()).toBe(0);
});

it('lets go of a lock that comes when the step is gone', async () => {
  const { step, held } = browser('given');
  step.hostConnected();
  step.hostDisconnected();
  await soon();
  expect(held()).toBe(0);
});

it('asks again when the page is looked at again, and not while it is left', async () => {
  const { step, held, leave, comeBack } = browser('given');
  step.hostConnected();
  await soon();
  leave();
  await soon();
  expect(held()).toBe(0);
  comeBack();
  await soon();
  expect(held()).toBe(1);
});

it.each(['forbidden', 'unknown'] as const)('says nothing where it is %s', async (wakeLock) => {
  const { step, held } = browser(wakeLock);
  step.hostConnected();
  await soon();
  step.hostDisconnected();
  expect(held()).toBe(0);
});

import type { HostMemory } from '../../workbook/port.ts';

type Store = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** Keeps texts in the browser's storage, apart for each workbook. */
export function workbookMemory(store: Store, workbookKey: string): HostMemory {
  const full = (key: string): string => `pour-ledger|${workbookKey}|${key}`;
  return {
    get: (key) => store.getItem(full(key)) ?? undefined,
    set: (key, value) => store.setItem(full(key), value),
    delete: (key) => store.removeItem(full(key)),
  };
}

/** A store that lasts as long as the page, for where the browser allows no other. */
export function passingStore(): Store {
  const texts = new Map<string, string>();
  return {
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, value) => void texts.set(key, value),
    removeItem: (key) => void texts.delete(key),
  };
}

import type { HostMemory, HostPort } from '../workbook/port.ts';

/** The part of a browser's storage that the pane's memory needs. */
export type TextStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

/** What every host in a browser gives the pane alike. */
export const inBrowser = (now: () => Date): Pick<HostPort, 'today' | 'newToken' | 'userName'> => ({
  today: () => isoDate(now()),
  newToken,
  // Neither Excel nor the workbench tells who is at the keyboard.
  userName: () => '',
});

/** Memory in a browser's own storage; `prefix` tells one workbook's from another's. */
export const memoryIn = (store: TextStore, prefix: string): HostMemory => ({
  get: (key) => store.getItem(prefix + key) ?? undefined,
  set: (key, value) => store.setItem(prefix + key, value),
  delete: (key) => store.removeItem(prefix + key),
  // The browser's storage outlives its pages by itself.
  kept: () => Promise.resolve(),
});

function isoDate(when: Date): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}`;
}

/** 50 random bits as ten letters and digits that are hard to misread. */
export function newToken(): string {
  const letters = '0123456789abcdefghjkmnpqrstvwxyz';
  const bytes = crypto.getRandomValues(new Uint8Array(10));
  return Array.from(bytes, (byte) => letters[byte % letters.length]).join('');
}

import '../../taskpane/index.ts';
import type { TableData } from '../../src/workbook/port.ts';
import { createMemoryPort, type MemoryPort } from '../support/memory-port.ts';
import { smallWorkshop } from './small-workshop.ts';

/** What the tests reach in the page. */
export interface PaneHandle {
  readonly port: MemoryPort;
}

declare global {
  interface Window {
    pane: PaneHandle;
  }
}

/** Tables and memory live in the page's session, so that a reload finds them as a real host would. */
const TABLES = 'tables';
const kept = sessionStorage.getItem(TABLES);
const start = kept === null ? smallWorkshop : (JSON.parse(kept) as readonly TableData[]);
let number = Number(sessionStorage.getItem('number') ?? 0);

const port = createMemoryPort(start, {
  userName: 'Ada',
  memory: {
    get: (key) => sessionStorage.getItem(`memory ${key}`) ?? undefined,
    set: (key, value) => {
      sessionStorage.setItem(`memory ${key}`, value);
    },
    delete: (key) => {
      sessionStorage.removeItem(`memory ${key}`);
    },
    kept: () => Promise.resolve(),
  },
});
port.onChange(() => {
  sessionStorage.setItem(TABLES, JSON.stringify(port.tables));
});

/** A token of its own each time, and the same in every run of the tests. */
const newToken = (): string => {
  number += 1;
  sessionStorage.setItem('number', String(number));
  return `abcdefgh${String(number).padStart(2, '0')}ffff`;
};

const pane = document.createElement('pour-pane');
const theme = new URLSearchParams(location.search).get('theme');
if (theme === 'light' || theme === 'dark') pane.theme = theme;
// Getters of the port must stay live, so it is extended and not copied.
pane.port = Object.assign(Object.create(port) as MemoryPort, { newToken });
window.pane = { port };
document.querySelector('main')?.append(pane);

import { browserFiles } from '../../../src/hosts/files/browser-files.ts';
import type { HostFiles } from '../../../src/workbook/port.ts';

/** What the tests reach in the page: the files as a host has them, what was handed over, and Stop. */
export interface FilesHandle extends HostFiles {
  readonly given: Uint8Array[];
  stopper: AbortController;
}

declare global {
  interface Window {
    files: FilesHandle;
  }
}

const given: Uint8Array[] = [];
const files = browserFiles((bytes, fileName) => {
  given.push(bytes);
  return Promise.resolve({ kind: 'given', sentence: `${fileName} is here.` });
});
window.files = { ...files, given, stopper: new AbortController() };

import type { CopyRead, Given, HostFiles } from '../../workbook/port.ts';
import { inWorker } from './in-worker.ts';

/** How a host hands over the bytes of a new workbook. */
export type HandOver = (bytes: Uint8Array, fileName: string) => Promise<Given>;

/** Other workbooks, read and written in the browser itself; the code for it is loaded when first needed. */
export function browserFiles(handOver: HandOver): HostFiles {
  return {
    readTables: async (bytes, signal) =>
      (await inWorker({ kind: 'read', bytes }, [bytes.buffer], signal)) ?? NOT_READ,
    give: async (workbook, signal) => {
      const bytes = await inWorker({ kind: 'write', workbook }, [], signal);
      return bytes === undefined ? NOT_MADE : handOver(bytes, `${workbook.fileName}.xlsx`);
    },
  };
}

const NOT_READ: CopyRead = {
  kind: 'refused',
  sentence:
    'The file could not be read: the part of Pour Ledger that reads workbooks broke off. Reload the pane and choose the file again.',
};

const NOT_MADE: Given = {
  kind: 'refused',
  sentence:
    'The copy could not be made: the part of Pour Ledger that writes workbooks broke off. Reload the pane and try again.',
};

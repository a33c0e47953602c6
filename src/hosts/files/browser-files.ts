import type { Given, HostFiles } from '../../workbook/port.ts';

/** How a host hands over the bytes of a new workbook. */
export type HandOver = (bytes: Uint8Array, fileName: string) => Promise<Given>;

/** Other workbooks, read and written in the browser itself; the code for it is loaded when first needed. */
export function browserFiles(handOver: HandOver): HostFiles {
  return {
    readTables: async (bytes) => (await code()).readTables(bytes),
    give: async (workbook) => {
      const { bytesOf } = await code();
      return handOver(bytesOf(workbook), `${workbook.fileName}.xlsx`);
    },
  };
}

const code = () => import(/* webpackChunkName: "other-workbooks" */ './other-workbooks.ts');

import type { CopyRead, Given, HostFiles, ValueWorkbook } from '../../workbook/port.ts';

/** How a host hands over the bytes of a new workbook. */
export type HandOver = (bytes: Uint8Array, fileName: string) => Promise<Given>;

/** Other workbooks, read and written in the browser itself; the code for it is loaded when first needed. */
export function browserFiles(handOver: HandOver): HostFiles {
  return {
    async readTables(bytes): Promise<CopyRead> {
      const { readTables } = await import('../xlsx/read-tables.ts');
      return readTables(bytes);
    },
    async give(workbook): Promise<Given> {
      return handOver(await bytesOf(workbook), `${workbook.fileName}.xlsx`);
    },
  };
}

async function bytesOf(workbook: ValueWorkbook): Promise<Uint8Array> {
  const [{ writeWorkbook }, { describeValues }] = await Promise.all([
    import('../xlsx/write.ts'),
    import('./value-workbook.ts'),
  ]);
  return writeWorkbook(describeValues(workbook));
}

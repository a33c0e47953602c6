import type { Given } from '../../../workbook/port.ts';

/** Hands a new workbook over as the browser's download. */
export function download(bytes: Uint8Array, fileName: string): Promise<Given> {
  const type = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
  const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  URL.revokeObjectURL(address);
  return Promise.resolve({
    kind: 'given',
    sentence: `${fileName} is among your browser's downloads.`,
  });
}

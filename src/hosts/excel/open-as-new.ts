import type { Given } from '../../workbook/port.ts';
import { sentenceOfFault } from './host-fault.ts';

/** Opens bytes as a new workbook that is nowhere saved: panes inside Excel may not download files. */
export async function openAsNew(bytes: Uint8Array, fileName: string): Promise<Given> {
  try {
    await Excel.createWorkbook(base64(bytes));
    return {
      kind: 'given',
      sentence: `It is open as a new workbook. Save it where you like, for example as ${fileName}.`,
    };
  } catch (problem) {
    return {
      kind: 'refused',
      sentence: `Excel did not open the copy: ${sentenceOfFault(problem)} Make it in the workbench instead (npm start): there it is downloaded.`,
    };
  }
}

function base64(bytes: Uint8Array): string {
  // Spread over more than some ten thousand arguments a call fails.
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192)
    pieces.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return btoa(pieces.join(''));
}

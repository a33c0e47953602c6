import { timeInWords } from '../../workbench/page/elements.ts';
import type { KeptBook } from '../kept/kept-book.ts';
import type { FileStanding } from '../kept/linked-file.ts';

/** Where a workbook is kept, and how old each copy is, in a sentence or two. */
export function standingWords(book: KeptBook, file: FileStanding, isLasting: boolean): string {
  const kept = `Kept in this browser, ${timeInWords(book.keptAt)}`;
  switch (file.kind) {
    case 'in step':
      return `${kept}, and in ${book.name}, ${timeInWords(file.at)}.`;
    case 'behind':
      return `${kept}. ${book.name} has what it had ${timeInWords(file.at)}.`;
    case 'not allowed':
      return `${kept}. ${book.name} has what it had ${timeInWords(file.at)}: press to save into it.`;
    case 'failed':
      return `${kept}. Not in ${book.name}, which has what it had ${timeInWords(file.at)} (${file.why}).`;
    case 'changed':
      return `${kept}. Not in ${book.name}, which another program changed.`;
    case 'no file':
      return [`${kept}.`, downloadWords(book), ...(isLasting ? [] : [MAY_GO])].join(' ');
  }
}

function downloadWords({ handedOver, version }: KeptBook): string {
  if (handedOver === undefined) return 'Not downloaded yet.';
  const when = timeInWords(handedOver.at);
  return handedOver.version === version
    ? `Downloaded as it is, ${when}.`
    : `Changed since it was downloaded, ${when}.`;
}

const MAY_GO = 'The browser may clear it when the device runs short of room: download it often.';

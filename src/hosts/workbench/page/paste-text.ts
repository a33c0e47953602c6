import { ICommandService, type Injector } from '@univerjs/presets';
import { SheetPasteShortKeyCommand } from '@univerjs/preset-sheets-core';

/** What the grid's paste by keyboard is given. */
interface Pasted {
  htmlContent?: string | undefined;
  textContent?: string | undefined;
  files?: unknown;
}

/** How the grid marks what was copied in it. */
const OWN_MARK = 'data-copy-id="';

/**
 * Takes what comes from elsewhere as cells of text: its looks, merged cells and pictures would not
 * reach the file. What was copied in the grid itself keeps its formulas.
 */
export function pasteAsText(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== SheetPasteShortKeyCommand.id) return;
    const pasted = params as Pasted;
    const { textContent: text = '', htmlContent = '' } = pasted;
    if (text === '' || htmlContent.includes(OWN_MARK)) return;
    pasted.files = undefined;
    // The grid's own reading of lines would drop blank cells before the first word.
    pasted.htmlContent = /[\t\n]/.test(text) ? tableOf(text) : undefined;
  });
}

function tableOf(text: string): string {
  const rows = text
    .replace(/\r?\n$/, '')
    .split(/\r?\n/)
    .map((line) => `<tr>${line.split('\t').map(cellOf).join('')}</tr>`);
  return `<table>${rows.join('')}</table>`;
}

const cellOf = (text: string): string =>
  `<td>${text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</td>`;

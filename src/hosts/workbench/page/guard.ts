import { CanceledError, ICommandService, type Injector } from '@univerjs/presets';

/** What the grid may do by hand: contents and view. Anything else would not reach the file. */
const ALLOWED = new Set(
  [
    'auto-clear-content auto-fill refill clear-selection-content set-range-values',
    'copy copy-down copy-right copy-formula-only',
    'paste paste-by-short-key paste-value paste-formula optional-paste text-to-number toggle-cell-checkbox',
    'move-selection move-selection-enter-tab expand-selection select-all select-range',
    'scroll-to-cell scroll-view scroll-view-reset set-scroll-relative',
    'set-worksheet-activate change-zoom-ratio set-zoom-ratio',
    'delta-column-width delta-row-height set-worksheet-col-width set-row-height',
    'set-row-is-auto-height set-col-auto-width set-col-is-auto-width',
  ]
    .join(' ')
    .split(' ')
    .map((name) => `sheet.command.${name}`),
);

/** Stops commands whose effect the file would lose, and says so. */
export function guardCommands(injector: Injector, say: (sentence: string) => void): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    if (!id.startsWith('sheet.command.') || ALLOWED.has(id)) return;
    say('The workbench changes what is in cells only. Do this in Excel, then open the file again.');
    throw new CanceledError();
  });
}

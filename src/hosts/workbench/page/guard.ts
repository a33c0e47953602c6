import { CanceledError, ICommandService, type Injector } from '@univerjs/presets';

const named = (...lines: readonly string[]): ReadonlySet<string> =>
  new Set(lines.flatMap((line) => line.split(' ').map((name) => `sheet.command.${name}`)));

/** What the grid may do by hand to contents. Anything else would not reach the file. */
const WRITES = named(
  'auto-clear-content auto-fill refill clear-selection-content set-range-values',
  'copy-down copy-right',
  'paste paste-by-short-key paste-value paste-formula optional-paste text-to-number toggle-cell-checkbox',
);

/** What it may do to the view. */
const LOOKS = named(
  'copy copy-formula-only',
  'move-selection move-selection-enter-tab expand-selection select-all select-range',
  'scroll-to-cell scroll-view scroll-view-reset set-scroll-relative',
  'set-worksheet-activate change-zoom-ratio set-zoom-ratio',
  'delta-column-width delta-row-height set-worksheet-col-width set-row-height',
  'set-row-is-auto-height set-col-auto-width set-col-is-auto-width',
);

/**
 * Stops commands whose effect the file would lose, and says so; with `readsOnly`, the sentence that says why, those too
 * that change contents.
 */
export function guardCommands(
  injector: Injector,
  say: (sentence: string) => void,
  readsOnly: () => string | undefined,
): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    if (!id.startsWith('sheet.command.') || LOOKS.has(id)) return;
    const why = readsOnly();
    if (why === undefined && WRITES.has(id)) return;
    say(why ?? ONLY_CONTENTS);
    throw new CanceledError();
  });
}

const ONLY_CONTENTS =
  'The workbench changes what is in cells only. Do this in Excel, then open the file again.';

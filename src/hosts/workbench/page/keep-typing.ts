import type { Injector } from '@univerjs/presets';
import { IEditorBridgeService } from '@univerjs/preset-sheets-core';

/**
 * Keeps what is being typed. Whenever the engine answers a cell at the same row and column, on
 * whatever sheet, the grid reads the typed cell again, over the letters typed so far: now only once
 * the cell is left.
 */
export function keepTyping(injector: Injector): void {
  const editor = injector.get(IEditorBridgeService);
  const readAgain = editor.refreshEditCellState.bind(editor);
  let isMissed = false;
  editor.refreshEditCellState = () => {
    isMissed = editor.isVisible().visible;
    if (!isMissed) readAgain();
  };
  editor.visible$.subscribe(({ visible }) => {
    // What was typed is taken into the cell first.
    if (!visible && isMissed) setTimeout(editor.refreshEditCellState);
  });
}

/** Tells whether a cell is open, with letters in it that the workbook does not hold yet. */
export function typingIn(injector: Injector): () => boolean {
  const editor = injector.get(IEditorBridgeService);
  return () => editor.isVisible().visible;
}

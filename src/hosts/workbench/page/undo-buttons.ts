import {
  ICommandService,
  IUndoRedoService,
  RedoCommand,
  UndoCommand,
  type Injector,
} from '@univerjs/presets';
import { ILayoutService } from '@univerjs/preset-sheets-core';
import { element } from './elements.ts';

/** Lets the header's buttons take back and repeat what was done in the grid. */
export function offerUndo(injector: Injector): void {
  const commands = injector.get(ICommandService);
  const undo = element('undo') as HTMLButtonElement;
  const redo = element('redo') as HTMLButtonElement;
  const run =
    (command: string) =>
    ({ detail }: MouseEvent): void => {
      void commands.executeCommand(command);
      // After a click of the mouse the keys go on into the grid; who came here by keyboard stays.
      if (detail > 0) injector.get(ILayoutService).focus();
    };
  undo.addEventListener('click', run(UndoCommand.id));
  redo.addEventListener('click', run(RedoCommand.id));
  injector.get(IUndoRedoService).undoRedoStatus$.subscribe(({ undos, redos }) => {
    undo.disabled = undos === 0;
    redo.disabled = redos === 0;
  });
}

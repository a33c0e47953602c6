import {
  ICommandService,
  IUndoRedoService,
  RedoCommand,
  UndoCommand,
  type Injector,
} from '@univerjs/presets';
import { element } from './elements.ts';

/** Lets the header's buttons take back and repeat what was done in the grid. */
export function offerUndo(injector: Injector): void {
  const commands = injector.get(ICommandService);
  const undo = element('undo') as HTMLButtonElement;
  const redo = element('redo') as HTMLButtonElement;
  undo.addEventListener('click', () => void commands.executeCommand(UndoCommand.id));
  redo.addEventListener('click', () => void commands.executeCommand(RedoCommand.id));
  injector.get(IUndoRedoService).undoRedoStatus$.subscribe(({ undos, redos }) => {
    undo.disabled = undos === 0;
    redo.disabled = redos === 0;
  });
}

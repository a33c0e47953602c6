import {
  ICommandService,
  LifecycleService,
  LifecycleStages,
  type Injector,
} from '@univerjs/presets';
import {
  FormulaExecuteStageType,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStopMutation,
  SetTriggerFormulaCalculationStartMutation,
  type ISetFormulaCalculationNotificationMutation,
} from '@univerjs/preset-sheets-core';
import type { Grid } from './grid.ts';
import type { Opening } from './opening.ts';
import { UNIT_ID } from './sheet-ids.ts';

/** Lets every formula answer once, showing how far they are; throws `Stopped` when the maker stops it. */
export async function firstAnswers(
  injector: Injector,
  grid: Grid,
  opening: Opening,
): Promise<void> {
  const commands = injector.get(ICommandService);
  await opening.pause(STEP, 0);
  // The engine hears nothing of changes before the grid has been drawn.
  await injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
  const listening = commands.onCommandExecuted(({ id, params }) => {
    if (id !== SetFormulaCalculationNotificationMutation.id) return;
    const share = shareOf(params as ISetFormulaCalculationNotificationMutation);
    if (share !== undefined) opening.show(STEP, share);
  });
  const stop = () => {
    commands.syncExecuteCommand(SetFormulaCalculationStopMutation.id, {});
  };
  opening.signal.addEventListener('abort', stop);
  // As if every sheet had come by a new name: forced, the engine would work out each formula twice.
  commands.syncExecuteCommand(SetTriggerFormulaCalculationStartMutation.id, {
    dirtyNameMap: { [UNIT_ID]: grid.sheetNames() },
  });
  await grid.settled();
  opening.signal.removeEventListener('abort', stop);
  listening.dispose();
  opening.signal.throwIfAborted();
}

const STEP = 'Working out the formulas';

/** Formulas that spill make others answer again, so two counts go by: half the way each. */
function shareOf({ stageInfo }: ISetFormulaCalculationNotificationMutation): number | undefined {
  if (stageInfo?.stage === FormulaExecuteStageType.CURRENTLY_CALCULATING) {
    return ratio(stageInfo.completedFormulasCount, stageInfo.totalFormulasToCalculate) / 2;
  }
  if (stageInfo?.stage === FormulaExecuteStageType.CURRENTLY_CALCULATING_ARRAY_FORMULA) {
    const { completedArrayFormulasCount, totalArrayFormulasToCalculate } = stageInfo;
    return (1 + ratio(completedArrayFormulasCount, totalArrayFormulasToCalculate)) / 2;
  }
  return undefined;
}

const ratio = (done: number, all: number): number => (all > 0 ? done / all : 0);

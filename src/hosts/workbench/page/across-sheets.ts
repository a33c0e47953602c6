import type { Injector } from '@univerjs/presets';
import { IFunctionService, type BaseFunction } from '@univerjs/preset-sheets-core';

/** The engine's functions that answer a reference into the table they were given. */
const ANSWER_A_REFERENCE = ['INDEX', 'OFFSET'] as const;

/**
 * Lets these functions reach into a table of another sheet. The engine finds the sheet of a
 * reference they answer by its name, which a table's reference does not carry: it would ask the
 * formula's own sheet.
 */
export function answerAcrossSheets(injector: Injector, nameOf: (sheetId: string) => string): void {
  const executors = injector.get(IFunctionService);
  for (const name of ANSWER_A_REFERENCE) {
    const executor = executors.getExecutor(name);
    if (!executor) throw new Error(`The grid has no function ${name}.`);
    nameSheets(executor, nameOf);
  }
}

function nameSheets(executor: BaseFunction, nameOf: (sheetId: string) => string): void {
  const create = executor.createReferenceObject.bind(executor);
  executor.createReferenceObject = (reference, range) => {
    if (reference.isTable()) reference.setForcedSheetName(nameOf(reference.getSheetId()));
    return create(reference, range);
  };
}

import type { Injector } from '@univerjs/presets';
import {
  BaseFunction,
  IDescriptionService,
  IFunctionService,
  type BaseValueObject,
  type FunctionVariantType,
} from '@univerjs/preset-sheets-core';
import { CellFailure } from '../../../../functions/failure.ts';
import { NAMESPACE } from '../../../../functions/records/index.ts';
import { argumentOf, ErrorArgument, errorOf, resultOf } from './engine-values.ts';
import type { Failures } from './failures.ts';
import { helpEntry, type FunctionHelp } from './function-help.ts';

/** Functions by contract id ("BOOK"): raw cell arguments in, a scalar or rows out. */
export type CellFunctions = Readonly<Record<string, (...args: unknown[]) => unknown>>;

/** Registers every function under its full name ("POUR.BOOK"). Call it after the workbook exists. */
export function registerFunctions(
  injector: Injector,
  functions: CellFunctions,
  help: readonly FunctionHelp[],
  failures: Failures,
): void {
  const names = Object.entries(functions).map(([id, answer]) => ({
    help: help.find((each) => each.id === id),
    name: `${NAMESPACE}.${id}`,
    answer,
  }));
  injector
    .get(IFunctionService)
    .registerExecutors(
      ...names.map(({ name, answer }) => new CellFunction(name, answer, failures)),
    );
  injector
    .get(IDescriptionService)
    .registerDescriptions(names.map(({ name, help: own }) => helpEntry(name, own)));
}

/**
 * The engine's own function class, not its ready-made "custom function": that one reads returned
 * text again, so that the text "1.5" or "25%" would come out as a number.
 */
class CellFunction extends BaseFunction {
  private readonly _answer: (...args: unknown[]) => unknown;
  private readonly _failures: Failures;

  constructor(name: string, answer: (...args: unknown[]) => unknown, failures: Failures) {
    super(name);
    this._answer = answer;
    this._failures = failures;
    this.minParams = 0;
    this.maxParams = 255;
    this.needsReferenceObject = true;
  }

  override calculate(...variants: FunctionVariantType[]): BaseValueObject {
    try {
      const result = resultOf(this._answer(...variants.map(argumentOf)));
      this.note(undefined);
      return result;
    } catch (thrown) {
      const { code, sentence } = failureOf(thrown);
      this.note(sentence);
      return errorOf(code);
    }
  }

  private note(sentence: string | undefined): void {
    const cell = { sheetId: this.subUnitId ?? '', row: this.row, column: this.column };
    this._failures.note(cell, String(this.name), sentence);
  }
}

function failureOf(thrown: unknown): { readonly code: string; readonly sentence: string } {
  if (thrown instanceof CellFailure) return { code: thrown.code, sentence: thrown.message };
  if (thrown instanceof ErrorArgument) {
    return {
      code: thrown.code,
      sentence: `A cell this formula asks shows ${thrown.code}: select that cell to read why.`,
    };
  }
  const reason = thrown instanceof Error ? thrown.message : String(thrown);
  return { code: '#VALUE!', sentence: `The function stopped for a reason of its own: ${reason}` };
}

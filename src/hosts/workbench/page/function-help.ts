import { BooleanNumber } from '@univerjs/presets';
import { FunctionType, type IFunctionInfo } from '@univerjs/preset-sheets-core';
import { spaced } from '../../../../functions/records/record.ts';

/** What functions.json, the standard metadata, tells of one function. */
export interface FunctionHelp {
  readonly id: string;
  readonly description?: string;
  readonly parameters?: readonly ParameterHelp[];
}

interface ParameterHelp {
  readonly name: string;
  readonly description?: string;
  readonly optional?: boolean;
  readonly repeating?: boolean;
}

/** The entry of one function in the grid's helper; a function without help shows its name alone. */
export function helpEntry(functionName: string, help: FunctionHelp | undefined): IFunctionInfo {
  const description = help?.description ?? '';
  return {
    functionName,
    functionType: FunctionType.User,
    description,
    abstract: description,
    functionParameter: (help?.parameters ?? []).map((parameter) => ({
      name: spaced(parameter.name),
      detail: parameter.description ?? '',
      example: '',
      require: parameter.optional === true ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: parameter.repeating === true ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    })),
  };
}

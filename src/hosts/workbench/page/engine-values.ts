import {
  ArrayValueObject,
  BooleanValueObject,
  ErrorValueObject,
  NumberValueObject,
  StringValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  type ErrorType,
  type FunctionVariantType,
} from '@univerjs/preset-sheets-core';
import { CellFailure } from '../../../../functions/failure.ts';
import { rowsOfReference } from './reference-rows.ts';

/** An argument that is itself an error: a cell that cannot be asked gives no answer. */
export class ErrorArgument extends Error {
  readonly code: ErrorType;

  constructor(code: ErrorType) {
    super(`An argument is ${code}.`);
    this.name = 'ErrorArgument';
    this.code = code;
  }
}

/**
 * One argument as the functions take it: omitted is undefined, a blank cell "", a one-cell range its
 * scalar, a larger range rows. A single error is thrown as ErrorArgument; errors inside a larger
 * range are their text, so that the function can name the cell.
 */
export function argumentOf(given: FunctionVariantType): unknown {
  if (!given.isReferenceObject()) return argumentOfValue(given as BaseValueObject);
  const reference = given as BaseReferenceObject;
  const isOneCell = reference.getRowCount() === 1 && reference.getColumnCount() === 1;
  const rows = isOneCell ? undefined : rowsOfReference(reference, textOfErrorOr);
  return rows ?? argumentOfValue(reference.toArrayValueObject());
}

function argumentOfValue(value: BaseValueObject): unknown {
  if (!value.isArray()) return value.isNull() ? undefined : scalarOf(value);
  const rows = (value as ArrayValueObject).getArrayValue();
  const only = rows[0]?.[0];
  if (rows.length === 1 && rows[0]?.length === 1) return only ? scalarOf(only) : '';
  return rows.map((row) => row.map((cell) => (cell ? textOfErrorOr(cell) : '')));
}

/** A function's result for the engine: text stays the very text, numbers must be finite. */
export function resultOf(result: unknown): BaseValueObject {
  if (!Array.isArray(result)) return valueOf(result);
  const rows = (result as readonly unknown[]).map((row) =>
    Array.isArray(row) ? (row as readonly unknown[]) : [row],
  );
  const columns = Math.max(0, ...rows.map((row) => row.length));
  return ArrayValueObject.create({
    calculateValueList: rows.map((row) =>
      Array.from({ length: columns }, (_, column) => valueOf(row[column])),
    ),
    rowCount: rows.length,
    columnCount: columns,
    unitId: '',
    sheetId: '',
    row: -1,
    column: -1,
  });
}

/** An error value for a cell. */
export const errorOf = (code: string): BaseValueObject =>
  ErrorValueObject.create(code as ErrorType);

function valueOf(value: unknown): BaseValueObject {
  if (typeof value === 'boolean') return BooleanValueObject.create(value);
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return NumberValueObject.create(value);
    throw new CellFailure('#VALUE!', 'The answer is too large for a number.');
  }
  if (value === undefined || value === null) return StringValueObject.create('');
  if (typeof value === 'string') return StringValueObject.create(value);
  throw new CellFailure('#VALUE!', 'The function gave an answer that is no text and no number.');
}

function scalarOf(value: BaseValueObject): unknown {
  if (value.isError()) throw new ErrorArgument((value as ErrorValueObject).getErrorType());
  return textOfErrorOr(value);
}

function textOfErrorOr(value: BaseValueObject): unknown {
  if (value.isNull()) return '';
  if (value.isError()) return (value as ErrorValueObject).getErrorType();
  return value.getValue();
}

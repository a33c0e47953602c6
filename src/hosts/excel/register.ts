import { CellFailure } from '../../../functions/failure.ts';
import { NAMESPACE } from '../../../functions/records/index.ts';
import type { WorksheetFunction } from '../../../functions/worksheet-function.ts';

/** The part of the spreadsheet's `CustomFunctions` global that registration needs. */
export interface FunctionHost {
  associate(id: string, fn: WorksheetFunction): void;
  readonly Error: new (code: never, message?: string) => unknown;
}

/** Registers every function by its id, each failing as the host's own cell error with its sentence. */
export function register(
  host: FunctionHost,
  functions: Readonly<Record<string, WorksheetFunction>>,
): void {
  for (const [id, answer] of Object.entries(functions)) {
    host.associate(id, (...args) => {
      try {
        return answer(...withoutInvocation(args));
      } catch (problem) {
        throw asCellError(host, id, problem);
      }
    });
  }
}

/**
 * Excel adds an object about the call after the arguments and sends null for an optional argument
 * left out. A cell's rich value is an object too, but says its `type`.
 */
function withoutInvocation(args: readonly unknown[]): unknown[] {
  const last = args.at(-1);
  const isInvocation =
    typeof last === 'object' && last !== null && !Array.isArray(last) && !('type' in last);
  return (isInvocation ? args.slice(0, -1) : args).map((arg) => arg ?? undefined);
}

function asCellError(host: FunctionHost, id: string, problem: unknown): unknown {
  // The host's error codes are these very texts (CustomFunctions.ErrorCode).
  const code = problem instanceof CellFailure ? problem.code : '#VALUE!';
  return new host.Error(code as never, sentenceOf(id, problem));
}

function sentenceOf(id: string, problem: unknown): string {
  if (problem instanceof CellFailure) return problem.message;
  const detail = problem instanceof Error ? problem.message : String(problem);
  return `${NAMESPACE}.${id} stopped on a fault of its own, not of your sheet. Please report it with this text: ${detail}`;
}

import { andThen, answer, type Result } from '../../domain/kernel/result.ts';
import type { Change } from '../../workbook/port.ts';
import { type Found, findRows } from '../../workbook/write/find-rows.ts';
import { rowsToLookAt } from '../../workbook/write/free-rows.ts';
import { type Plan, planFound } from '../../workbook/write/plan-change.ts';
import { readTargets } from './read-targets.ts';
import { readStanding, type StandingRows } from './standing-rows.ts';
import type { Target } from './target.ts';

/** What a change meets in the workbook, and what is left of it to write. */
export interface Looked {
  readonly found: Found<Target>;
  readonly standing: StandingRows;
  readonly plan: Plan<Target>;
}

/** Reads all that a change touches: as `readTargets`, and then the rows that its plan looks at, if any. */
export async function lookInto(
  context: Excel.RequestContext,
  change: Change,
): Promise<Result<Looked>> {
  const found = findRows(change, await readTargets(context, change));
  if (!found.ok) return found;
  const rows = await readStanding(context, rowsToLookAt(found.value));
  return andThen(rows, (standing) =>
    answer({ found: found.value, standing, plan: planFound(found.value, standing) }),
  );
}

import type { Applied, Change } from '../../workbook/port.ts';
import type { Writes } from '../../workbook/write/plan-change.ts';
import { sentenceOfFault } from './host-fault.ts';
import { lookInto } from './look-into.ts';
import { takeBack } from './take-back.ts';
import { type Target, whyShut } from './target.ts';
import { Misplaced, writeWork } from './write-work.ts';

/** Runs a batch against the workbook, as `Excel.run` does. */
export type Run = <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

const refused = (sentence: string): Applied => ({ kind: 'refused', sentence });

/**
 * Writes a change whole or not at all, in at most five syncs whatever its size, and one more for every
 * 75,000 rows of a table or cells that are looked at: everything is read and checked first, then all writing is queued into the
 * last one. Throws with a sentence where
 * writing broke off and Excel would not say what it kept.
 */
export async function applyChange(run: Run, change: Change): Promise<Applied> {
  let begun: Writes<Target> | undefined;
  try {
    return await run(async (context) => {
      const looked = await lookInto(context, change);
      if (!looked.ok) return refused(looked.failure.sentence);
      const { plan, standing } = looked.value;
      if (plan.kind !== 'write') return plan;
      const shut = [...plan.rows, ...plan.cells]
        .map(({ table }) => whyShut(table))
        .find((why) => why !== undefined);
      if (shut !== undefined) return refused(shut);
      begun = plan;
      const spoilt = await writeWork(context, plan, standing);
      return spoilt === undefined ? { kind: 'applied' } : refused(spoilt);
    });
  } catch (problem) {
    if (problem instanceof Misplaced) throw problem;
    const sentence = sentenceOfFault(problem);
    return begun === undefined ? refused(sentence) : settle(run, change, begun, sentence);
  }
}

/**
 * After writing broke off, looks what Excel kept: all of it is as good as written; a part is taken
 * back. Rows cleared in part are cleared to the end: without their ids nothing could be put back.
 */
async function settle(
  run: Run,
  change: Change,
  begun: Writes<Target>,
  sentence: string,
): Promise<Applied> {
  try {
    return await run(async (context) => {
      const looked = await lookInto(context, change);
      if (!looked.ok) throw new Error(looked.failure.sentence);
      const { plan, standing } = looked.value;
      if (plan.kind === 'refused') throw new Error(plan.sentence);
      if (plan.kind === 'already there') return { kind: 'applied' };
      if (isPartCleared(begun, plan)) {
        const spoilt = await writeWork(context, plan, standing);
        if (spoilt !== undefined) throw new Error(spoilt);
        return { kind: 'applied' };
      }
      await takeBack(context, begun, looked.value);
      return refused(sentence);
    });
  } catch (cause) {
    throw new Error(
      `${sentence} Excel then did not say whether a part was kept. Try again: what is there already is never written twice.`,
      { cause },
    );
  }
}

/** Whether Excel kept some of the cells that a removal began to clear. */
const isPartCleared = (begun: Writes<Target>, left: Writes<Target>): boolean =>
  begun.cells.some(({ isRemoved }) => isRemoved) && left.cells.length < begun.cells.length;

import type { Applied, Change } from '../../workbook/port.ts';
import { Refusal, whyShut } from './change-plan.ts';
import { targetsOf, type Work } from './change-work.ts';
import { sentenceOfFault } from './host-fault.ts';
import { lookInto } from './look-into.ts';
import { takeBack } from './take-back.ts';
import { Misplaced, writeWork } from './write-work.ts';

/** Runs a batch against the workbook, as `Excel.run` does. */
export type Run = <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

const refused = (sentence: string): Applied => ({ kind: 'refused', sentence });

/**
 * Writes a change whole or not at all, in at most five syncs whatever its size, and one more for every
 * 75,000 rows that stand: everything is read and checked first, then all writing is queued into the
 * last one. Throws with a sentence where
 * writing broke off and Excel would not say what it kept.
 */
export async function applyChange(run: Run, change: Change): Promise<Applied> {
  let begun: Work | undefined;
  try {
    return await run(async (context) => {
      const found = await lookInto(context, change);
      if (found instanceof Refusal) return refused(found.sentence);
      const { work, standing } = found;
      if (work === 'already there') return { kind: 'already there' };
      const shut = targetsOf(work)
        .map(whyShut)
        .find((why) => why !== undefined);
      if (shut !== undefined) return refused(shut);
      begun = work;
      const spoilt = await writeWork(context, work, standing);
      return spoilt === undefined ? { kind: 'applied' } : refused(spoilt.sentence);
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
async function settle(run: Run, change: Change, begun: Work, sentence: string): Promise<Applied> {
  try {
    return await run(async (context) => {
      const now = await lookInto(context, change);
      if (now instanceof Refusal) throw new Error(now.sentence);
      if (now.work === 'already there') return { kind: 'applied' };
      if (isPartCleared(begun, now.work)) {
        const spoilt = await writeWork(context, now.work, now.standing);
        if (spoilt !== undefined) throw new Error(spoilt.sentence);
        return { kind: 'applied' };
      }
      await takeBack(context, begun, now);
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
const isPartCleared = (begun: Work, left: Work): boolean =>
  begun.cells.some(({ isRemoved }) => isRemoved) && left.cells.length < begun.cells.length;

import type { Run } from './apply-change.ts';

/** Names of the workbook that lead to no range any more: one sync, whatever their number. */
export const brokenNames = (run: Run): Promise<readonly string[]> =>
  run(async (context) => {
    const { names } = context.workbook;
    names.load('items/name,items/formula,items/visible');
    await context.sync();
    return names.items
      .filter(({ formula, visible }) => visible && String(formula).includes('#REF!'))
      .map(({ name }) => name);
  });

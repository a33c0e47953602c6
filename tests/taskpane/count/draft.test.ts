import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countSteps,
  keepCountDraft,
  newCountDraft,
  restoreCountDraft,
} from '../../../taskpane/count/draft.ts';

describe('a kept count', () => {
  it('comes back as it was, whatever was typed', () => {
    const some = fc.record({
      step: fc.constantFrom(...countSteps),
      kind: fc.string(),
      counts: fc.dictionary(fc.string(), fc.string()),
      also: fc.array(fc.string()),
    });
    fc.assert(
      fc.property(some, (told) => {
        const kept = keepCountDraft({ ...newCountDraft('C-1'), ...told });
        const back = restoreCountDraft(kept);
        expect(back && keepCountDraft(back)).toBe(kept);
      }),
    );
  });

  it.each([
    ['"step":"enter"', '"step":"weigh"'],
    ['"counts":{}', '"counts":[]'],
    ['"also":[]', '"also":[7]'],
    ['"form":1', '"form":2'],
  ])('is not taken where %s reads %s', (from, to) => {
    const kept = keepCountDraft(newCountDraft('C-1'));
    expect(kept).toContain(from);
    expect(restoreCountDraft(kept.replace(from, to))).toBeUndefined();
  });
});

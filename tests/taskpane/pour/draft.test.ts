import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { taskId } from '../../../taskpane/task/task-id.ts';
import { typedWith } from '../../../taskpane/task/typed.ts';
import {
  changeDraft,
  type Draft,
  keepDraft,
  newDraft,
  restoreDraft,
  steps,
} from '../../../taskpane/pour/draft.ts';

const draft = newDraft('B20261125-ABCDEFGHKM', '2026-11-25');
const told: Draft = {
  ...draft,
  step: 'preview',
  design: 'Harbour Light',
  bars: '6',
  useLeftovers: false,
  ticks: { 'Blue > Clear base': '71.7 g' },
  good: '5',
  weighed: { 'Blue > Clear base': '72' },
  spares: { 'Blue × Small tiles': '9' },
  leftoverG: { 'Blue leftover': '3' },
  countIsOff: ['Wrapper'],
  recording: {
    appends: [{ table: 'LedgerLines', idColumn: 'Entry', rows: [{ Entry: 'x' }] }],
    updates: [],
  },
};

describe('taskId', () => {
  it.each([
    ['abcdefghkmnprstx', 'C20261125-ABCDEFGHKM'],
    ['7kq2m9xd4r', 'C20261125-7KQ2M9XD4R'],
  ])('is made of the day and the host’s token: %s', (token, id) => {
    expect(taskId('C', '2026-11-25', token)).toBe(id);
  });
});

describe('a kept draft', () => {
  it('comes back as it was, whatever was typed', () => {
    const texts = fc.dictionary(fc.string(), fc.string());
    const drafts: fc.Arbitrary<Draft> = fc
      .record({
        step: fc.constantFrom(...steps),
        design: fc.string(),
        bars: fc.string(),
        note: fc.string(),
        useLeftovers: fc.constantFrom(true, false, undefined),
        weighed: texts,
        ticks: texts,
        countIsOff: fc.array(fc.string()),
        recording: fc.constantFrom(undefined, told.recording),
      })
      .map((some) => ({ ...draft, ...some }));
    fc.assert(
      fc.property(drafts, (any) => {
        const back = restoreDraft(keepDraft(any));
        expect(back && keepDraft(back)).toBe(keepDraft(any));
      }),
    );
  });

  it.each([
    ['nothing', undefined],
    ['no JSON', '{"form":1,"dra'],
    ['another form', keepDraft(told).replace(/"form":\d+/u, '"form":0')],
    ['an unknown step', keepDraft(told).replace('"preview"', '"elsewhere"')],
    ['a number where text was typed', keepDraft(told).replace('"bars":"6"', '"bars":6')],
    [
      'a list for figures',
      keepDraft({ ...told, weighed: {} }).replace('"weighed":{}', '"weighed":[]'),
    ],
    ['a broken change', keepDraft(told).replace('"idColumn":"Entry"', '"idColumn":7')],
    ['null', 'null'],
    ['a list', '[]'],
  ])('is not taken from %s', (_, text) => {
    expect(restoreDraft(text)).toBeUndefined();
  });

  it('is never a crash, whatever the text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(restoreDraft(text)).toBeUndefined();
      }),
    );
  });
});

describe('changeDraft', () => {
  it('forgets the lines of another design, keeps the id and the day', () => {
    const changed = changeDraft(told, { design: 'Plain Wave' });
    expect(changed).toEqual({ ...draft, step: 'preview', design: 'Plain Wave', bars: '6' });
  });

  it('forgets only ticks when the bars change', () => {
    expect(changeDraft(told, { bars: '7' })).toEqual({ ...told, bars: '7', ticks: {} });
  });

  it('leaves the draft it is given alone', () => {
    const before = keepDraft(told);
    changeDraft(told, { design: 'Plain Wave', bars: '1' });
    expect(keepDraft(told)).toBe(before);
  });
});

describe('typedWith', () => {
  it.each([
    [{ a: '1' }, 'b', '2', { a: '1', b: '2' }],
    [{ a: '1' }, 'a', '2', { a: '2' }],
    [{ a: '1', b: '2' }, 'a', undefined, { b: '2' }],
  ] as const)('%j with %s = %s', (typed, name, figure, expected) => {
    expect(typedWith(typed, name, figure)).toEqual(expected);
  });
});

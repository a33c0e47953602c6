import { describe, expect, it } from 'vitest';
import { planNotes } from '../../../src/domain/now/plan-notes.ts';
import { bookOf, on, refusal, season, sound } from '../supplies/season-book.ts';

const from = on('2026-11-02');
const notesOf = (parts: Parameters<typeof season>[0]) =>
  sound(planNotes(bookOf(season(parts)), from, { reuse: false })).map(
    ({ kind, about, sentence }) => [kind, about, sentence],
  );

describe('what the plan leaves to see to', () => {
  it('is what does not fit and the way out, what is over, what to fill in, what is assumed', () => {
    const found = notesOf({
      plan: [
        ['P1', 'Brick', 4, '2026-10-31'],
        ['P2', 'Mosaic', 4, '2026-11-03'],
        ['P3', 'Mosaic', 4, '2026-12-05'],
      ],
      // 30 minutes of setup and 10 a bar; by the 3rd less 36 hours no day is left.
      settings: [['Minutes per day', 70, '']],
      molds: [
        ['Tiles', 'tiles', 36, 25, 0, 4, 30],
        ['Loaf', 'bars', 6, '', '', '', ''],
      ],
      materials: [
        ['Base', 'base', 'g', 1000, '', 5, ''],
        ['Box', 'packaging', 'each', 10, 4, 2, 3],
      ],
    });
    expect(found.map(([kind, about]) => [kind, about])).toEqual([
      ['past line', 'P1'],
      ['line', 'P2'],
      ['material', 'Base'],
      ['assumed', ''],
    ]);
    expect(found[1]?.[2]).toMatch(
      /^Plan line P2 does not fit: there is no time for 4 of its 4 bars.* It fits with .*Ready by 2026-11-0\d/u,
    );
    expect(found[2]?.[2]).toBe('Fill in Pack price for Base in Materials.');
    expect(found[3]?.[2]).toBe('Sections of Loaf is blank in Molds, so that mold is no limit.');
  });

  it('says once why a design without layers can’t be planned, though nothing can be bought then', () => {
    expect(
      notesOf({ plan: [['P1', 'Idea', 4, '2026-12-05']], settings: [['Minutes per day', 60, '']] }),
    ).toEqual([
      [
        'line',
        'P1',
        "Plan line P1 can't be planned: Idea has no lines in Layers. Add what one bar is made of.",
      ],
    ]);
  });

  it('is nothing where all is known and fits', () => {
    expect(
      notesOf({
        plan: [['P1', 'Brick', 4, '2026-12-05']],
        settings: [['Minutes per day', 120, '']],
      }),
    ).toEqual([]);
  });

  it('needs a plan', () => {
    const none = planNotes(bookOf(season({ plan: [] })), from, { reuse: false });
    expect(refusal(none).sentence).toMatch(/^Plan has no lines\./u);
  });
});

import { describe, expect, it, vi } from 'vitest';
import { planPour } from '../../../src/domain/ledger/plan-pour.ts';
import { postBatch } from '../../../src/domain/ledger/post-batch.ts';
import { pourLook } from '../../../taskpane/pour/pour-look.ts';
import { pourTask } from '../../../taskpane/pour/pour-task.ts';
import type { Step } from '../../../taskpane/pour/draft.ts';
import { Flow } from '../../../taskpane/task/flow.ts';
import { Session } from '../../../taskpane/task/session.ts';
import { createMemoryPort } from '../../support/memory-port.ts';
import { smallWorkshop } from '../small-workshop.ts';

// The pages are only named here, not drawn: their buttons and ticks need a browser.
vi.mock('@fluentui/web-components/button.js', () => ({}));
vi.mock('@fluentui/web-components/checkbox.js', () => ({}));
// The very functions, counted.
vi.mock('../../../src/domain/ledger/plan-pour.ts', { spy: true });
vi.mock('../../../src/domain/ledger/post-batch.ts', { spy: true });

/** The pour's task over the small workshop, at one of its pages; and what is worked out for drawing it. */
async function at(step: Step) {
  const port = createMemoryPort(smallWorkshop);
  const session = new Session(port);
  const flow = new Flow(pourTask, port, session, () => undefined);
  await session.read();
  flow.tell({ design: 'Harbour Light', bars: '4', good: '4', lost: '0', step });
  vi.clearAllMocks();
  const draw = () => {
    const { state } = flow;
    if (state.kind !== 'ready') throw new Error(state.kind);
    const page = pourLook.page(flow, state);
    pourLook.content(flow, state, page);
    expect(page).toBe(step);
    return {
      plannings: vi.mocked(planPour).mock.calls.length,
      postings: vi.mocked(postBatch).mock.calls.length,
    };
  };
  return { flow, draw };
}

describe('the plan of a pour', () => {
  it.each(['weigh', 'outcome', 'preview'] as const)(
    'is worked out once for drawing %s, with its posting, and not again while nothing changes',
    async (step) => {
      const { draw } = await at(step);
      expect(draw()).toEqual({ plannings: 1, postings: 1 });
      expect(draw()).toEqual({ plannings: 1, postings: 1 });
    },
  );

  it('goes from page to page, and stays while a note is typed', async () => {
    const { flow, draw } = await at('preview');
    draw();
    flow.tell({ note: 'poured late' });
    expect(draw()).toEqual({ plannings: 1, postings: 2 });
    flow.tell({ countIsOff: ['Clear base'] });
    expect(draw()).toEqual({ plannings: 1, postings: 3 });
    flow.tell({ bars: '5' });
    expect(draw().plannings).toBe(2);
  });
});

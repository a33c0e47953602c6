import { isRecord } from '../../src/domain/kernel/is-record.ts';
import { holdsTexts, isRecording, isTyped, keepAs, restoreAs } from '../task/kept.ts';
import type { TaskDraft } from '../task/task-kind.ts';
import type { Typed } from '../task/typed.ts';
import { telling } from '../task/events.ts';

/** The pages of the flow, in order. */
export const steps = ['choose', 'weigh', 'outcome', 'preview', 'done'] as const;
export type Step = (typeof steps)[number];

/**
 * One pour as far as the maker has told it. Everything stays as typed: it is read afresh against the
 * workbook each time, so that a changed workbook loses nothing of it. A figure that is absent means "as
 * planned".
 */
export interface Draft extends TaskDraft {
  /** Id of the batch, made once when the form opens and kept through retries and reloads. */
  readonly batch: string;
  readonly step: Step;
  readonly design: string;
  readonly bars: string;
  /** Undefined until the maker says: then leftovers are used where there are any. */
  readonly useLeftovers: boolean | undefined;
  /** ISO date. */
  readonly poured: string;
  /** The amount each line showed when it was ticked, by `lineKey`. */
  readonly ticks: Typed;
  readonly good: string;
  readonly seconds: string;
  readonly lost: string;
  readonly minutes: string;
  readonly note: string;
  /** By `lineKey`, in the line's own measure. */
  readonly weighed: Typed;
  /** Pieces by item name. */
  readonly spares: Typed;
  /** g by item name. */
  readonly leftoverG: Typed;
  /** Names of the items whose count the maker says is off. */
  readonly countIsOff: readonly string[];
}

/** A pour that nothing has been said of yet. */
export function newDraft(batch: string, today: string): Draft {
  return {
    batch,
    step: 'choose',
    design: '',
    bars: '',
    useLeftovers: undefined,
    poured: today,
    ...nothingTold,
  };
}

const nothingTold = {
  ticks: {},
  good: '',
  seconds: '',
  lost: '',
  minutes: '',
  note: '',
  weighed: {},
  spares: {},
  leftoverG: {},
  countIsOff: [],
  recording: undefined,
} as const satisfies Partial<Draft>;

/**
 * The draft with some of it told anew. Another design is another pour: what was told of the first
 * one's lines goes. Other bars are other amounts: the ticks go.
 */
export function changeDraft(draft: Draft, change: Partial<Draft>): Draft {
  const isOtherDesign = change.design !== undefined && change.design !== draft.design;
  const isOtherCount = change.bars !== undefined && change.bars !== draft.bars;
  return {
    ...draft,
    ...(isOtherDesign ? { ...nothingTold, useLeftovers: undefined } : {}),
    ...(isOtherCount ? { ticks: {} } : {}),
    ...change,
  };
}

/** Text to keep, which `restoreDraft` reads. */
export const keepDraft = (draft: Draft): string => keepAs(FORM, draft);

/** A kept draft, or undefined where the text is none. */
export const restoreDraft = (text: string | undefined): Draft | undefined =>
  restoreAs(FORM, text, isDraft);

/** Changes when a kept draft can't be read as before. */
const FORM = 2;

const texts = ['batch', 'design', 'bars', 'poured', 'good', 'seconds', 'lost', 'minutes', 'note'];
const typedGroups = ['ticks', 'weighed', 'spares', 'leftoverG'];

function isDraft(value: unknown): value is Draft {
  if (!isRecord(value) || !holdsTexts(value, texts)) return false;
  const leftovers = value['useLeftovers'];
  const off = value['countIsOff'];
  return (
    typedGroups.every((name) => isTyped(value[name])) &&
    steps.some((step) => step === value['step']) &&
    (leftovers === undefined || typeof leftovers === 'boolean') &&
    isRecording(value['recording']) &&
    Array.isArray(off) &&
    off.every((name) => typeof name === 'string')
  );
}

/** Sends news of a pour. */
export const tell = telling<Draft>();

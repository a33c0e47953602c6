import type { Change } from '../src/workbook/port.ts';

/** The pages of the flow, in order. */
export const steps = ['choose', 'weigh', 'outcome', 'preview', 'done'] as const;
export type Step = (typeof steps)[number];

/** Figures by the name of what they count, exactly as typed; a name that is absent means "as planned". */
export type Typed = Readonly<Record<string, string>>;

/**
 * One pour as far as the maker has told it. Everything stays as typed: it is read afresh against the
 * workbook each time, so that a changed workbook loses nothing of it.
 */
export interface Draft {
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
  /** What was being written when recording began, until it is known how that ended. */
  readonly recording: Change | undefined;
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
  minutes: '',
  note: '',
  weighed: {},
  spares: {},
  leftoverG: {},
  countIsOff: [],
  recording: undefined,
} as const satisfies Partial<Draft>;

/** Characters of a token in a batch id: 10 of at least 16 kinds keep 40 bits of chance. */
const TOKEN_LENGTH = 10;

/** An id such as B20261125-7KQ2M9XD4R from an ISO date and a host's token. */
export function batchId(today: string, token: string): string {
  return `B${today.replaceAll('-', '')}-${token.slice(0, TOKEN_LENGTH).toUpperCase()}`;
}

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

/** The figures with one typed; `undefined` goes back to the plan. */
export function typedWith(typed: Typed, name: string, figure: string | undefined): Typed {
  const others = Object.entries(typed).filter(([known]) => known !== name);
  return Object.fromEntries(figure === undefined ? others : [...others, [name, figure]]);
}

/** Text to keep, which `restoreDraft` reads. */
export function keepDraft(draft: Draft): string {
  return JSON.stringify({ form: FORM, draft });
}

/** Changes when a kept draft can't be read as before. */
const FORM = 1;

/** A kept draft, or undefined where the text is none: a half-written or foreign text is never trusted. */
export function restoreDraft(text: string | undefined): Draft | undefined {
  if (text === undefined) return undefined;
  try {
    const kept: unknown = JSON.parse(text);
    if (!isRecord(kept) || kept['form'] !== FORM || !isRecord(kept['draft'])) return undefined;
    return isDraft(kept['draft']) ? kept['draft'] : undefined;
  } catch {
    return undefined;
  }
}

const texts = ['batch', 'design', 'bars', 'poured', 'good', 'seconds', 'minutes', 'note'];
const typedGroups = ['ticks', 'weighed', 'spares', 'leftoverG'];

function isDraft(value: Readonly<Record<string, unknown>> | Draft): value is Draft {
  const field = (name: string): unknown => Object.entries(value).find(([key]) => key === name)?.[1];
  const leftovers = field('useLeftovers');
  const off = field('countIsOff');
  return (
    texts.every((name) => typeof field(name) === 'string') &&
    typedGroups.every((name) => isTyped(field(name))) &&
    steps.some((step) => step === field('step')) &&
    (leftovers === undefined || typeof leftovers === 'boolean') &&
    (field('recording') === undefined || isChange(field('recording'))) &&
    Array.isArray(off) &&
    off.every((name) => typeof name === 'string')
  );
}

function isChange(value: unknown): value is Change {
  if (!isRecord(value) || !Array.isArray(value['appends']) || !Array.isArray(value['updates']))
    return false;
  return value['appends'].every(
    (append: unknown) =>
      isRecord(append) &&
      typeof append['table'] === 'string' &&
      typeof append['idColumn'] === 'string' &&
      Array.isArray(append['rows']) &&
      append['rows'].every(isRecord),
  );
}

function isTyped(value: unknown): value is Typed {
  return isRecord(value) && Object.values(value).every((figure) => typeof figure === 'string');
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

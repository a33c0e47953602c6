import { nameKey } from '../../src/domain/kernel/names.ts';
import { isRecord } from '../../src/domain/kernel/is-record.ts';
import { holdsTexts, isRecording, keepAs, restoreAs } from '../task/kept.ts';
import { type Asked, isSure } from '../task/question.ts';
import type { TaskDraft } from '../task/task-kind.ts';
import { telling } from '../task/events.ts';

/** The pages of selling, in order. */
export const sellSteps = ['enter', 'preview', 'done'] as const;
export type SellStep = (typeof sellSteps)[number];

/** Bars of one design sold at one price, exactly as typed. */
export interface TypedSale {
  readonly design: string;
  readonly bars: string;
  /** Undefined takes the design's own Price. */
  readonly price: string | undefined;
}

/** One selling day as far as the maker has told it; it is read afresh against the workbook each time. */
export interface SellDraft extends TaskDraft, Asked {
  /** Made once when the form opens and kept through retries and reloads. */
  readonly id: string;
  readonly step: SellStep;
  /** ISO date. */
  readonly soldOn: string;
  /** Name of the fair, or "" for none. */
  readonly fair: string;
  readonly lines: readonly TypedSale[];
  readonly fees: string;
  /** Rows brought from a sheet and not yet taken over. */
  readonly pasted: string;
}

/** A selling day that nothing has been said of yet. */
export function newSellDraft(id: string, today: string): SellDraft {
  return {
    id,
    step: 'enter',
    soldOn: today,
    fair: '',
    lines: [],
    fees: '',
    pasted: '',
    recording: undefined,
  };
}

/** The lines with one told anew: the `at`-th of its design, which is added where it is not there yet. */
export function withSale(
  lines: readonly TypedSale[],
  design: string,
  at: number,
  told: Partial<TypedSale>,
): TypedSale[] {
  let seen = -1;
  const changed = lines.map((line) => {
    if (!isOf(line, design)) return line;
    seen += 1;
    return seen === at ? { ...line, ...told } : line;
  });
  return seen >= at ? changed : [...changed, { design, bars: '', price: undefined, ...told }];
}

/** The lines of one design. */
export const salesOf = (lines: readonly TypedSale[], design: string): TypedSale[] =>
  lines.filter((line) => isOf(line, design));

/** The lines with other rows in place of those of the same designs. */
export function withPasted(lines: readonly TypedSale[], pasted: readonly TypedSale[]): TypedSale[] {
  const others = lines.filter(({ design }) => salesOf(pasted, design).length === 0);
  return [...others, ...pasted];
}

const isOf = (line: TypedSale, design: string): boolean => nameKey(line.design) === nameKey(design);

/** Text to keep, which `restoreSellDraft` reads. */
export const keepSellDraft = (draft: SellDraft): string => keepAs(FORM, draft);

/** A kept draft, or undefined where the text is none. */
export const restoreSellDraft = (text: string | undefined): SellDraft | undefined =>
  restoreAs(FORM, text, isSellDraft);

/** Changes when a kept draft can't be read as before. */
const FORM = 1;

function isSellDraft(value: unknown): value is SellDraft {
  if (!isRecord(value)) return false;
  const lines = value['lines'];
  return (
    holdsTexts(value, ['id', 'soldOn', 'fair', 'fees', 'pasted']) &&
    sellSteps.some((step) => step === value['step']) &&
    isRecording(value['recording']) &&
    isSure(value['sure']) &&
    Array.isArray(lines) &&
    lines.every(isTypedSale)
  );
}

function isTypedSale(value: unknown): value is TypedSale {
  if (!isRecord(value) || !holdsTexts(value, ['design', 'bars'])) return false;
  return value['price'] === undefined || typeof value['price'] === 'string';
}

/** Sends news of a selling day. */
export const tell = telling<SellDraft>();

import { isRecord } from '../../src/domain/kernel/is-record.ts';
import { holdsTexts, isRecording, keepAs, restoreAs } from '../task/kept.ts';
import { type Asked, isSure } from '../task/question.ts';
import type { TaskDraft } from '../task/task-kind.ts';
import { telling } from '../task/events.ts';

/** The pages of a delivery, in order. */
export const receiveSteps = ['enter', 'preview', 'done'] as const;
export type ReceiveStep = (typeof receiveSteps)[number];

/** Ways to share the freight out. */
export const freightShares = ['value', 'weight'] as const;
export type FreightShare = (typeof freightShares)[number];

/** One material that came, exactly as typed. */
export interface TypedLot {
  readonly material: string;
  /** Packs of the material's Pack size; or else a quantity in its stock unit. */
  readonly packs: string;
  readonly quantity: string;
  readonly paid: string;
  /** ISO date, or "". */
  readonly bestBefore: string;
  /** A lot number of the maker's own or the supplier's; "" takes one from the delivery's id. */
  readonly lot: string;
}

/** One delivery as far as the maker has told it; read afresh against the workbook each time. */
export interface ReceiveDraft extends TaskDraft, Asked {
  /** Made once when the form opens and kept through retries and reloads. */
  readonly id: string;
  readonly step: ReceiveStep;
  readonly supplier: string;
  /** ISO date. */
  readonly received: string;
  readonly freight: string;
  readonly shareBy: FreightShare;
  /** At least one. */
  readonly lines: readonly TypedLot[];
}

/** A line that nothing has been said of yet. */
export const blankLot: TypedLot = {
  material: '',
  packs: '',
  quantity: '',
  paid: '',
  bestBefore: '',
  lot: '',
};

/** A delivery that nothing has been said of yet. */
export function newReceiveDraft(id: string, today: string): ReceiveDraft {
  return {
    id,
    step: 'enter',
    supplier: '',
    received: today,
    freight: '',
    shareBy: 'value',
    lines: [blankLot],
    recording: undefined,
  };
}

/** The lines with the `at`-th told anew. */
export const withLot = (
  lines: readonly TypedLot[],
  at: number,
  told: Partial<TypedLot>,
): TypedLot[] => lines.map((line, index) => (index === at ? { ...line, ...told } : line));

/** Text to keep, which `restoreReceiveDraft` reads. */
export const keepReceiveDraft = (draft: ReceiveDraft): string => keepAs(FORM, draft);

/** A kept draft, or undefined where the text is none. */
export const restoreReceiveDraft = (text: string | undefined): ReceiveDraft | undefined =>
  restoreAs(FORM, text, isReceiveDraft);

/** Changes when a kept draft can't be read as before. */
const FORM = 1;

function isReceiveDraft(value: unknown): value is ReceiveDraft {
  if (!isRecord(value)) return false;
  const lines = value['lines'];
  return (
    holdsTexts(value, ['id', 'supplier', 'received', 'freight']) &&
    receiveSteps.some((step) => step === value['step']) &&
    freightShares.some((share) => share === value['shareBy']) &&
    isRecording(value['recording']) &&
    isSure(value['sure']) &&
    Array.isArray(lines) &&
    lines.length > 0 &&
    lines.every((line) => isRecord(line) && holdsTexts(line, Object.keys(blankLot)))
  );
}

/** Sends news of a delivery. */
export const tell = telling<ReceiveDraft>();

import type { Book, PlanLine } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { minutesFor, unlimited } from './capacity.ts';
import { adviceFor, laterReadyBy, missingSentence } from './fit-advice.ts';
import { type OpenLine, pastSentence } from './plan-lines.ts';
import { hasLayers, plannedBatches } from './planned-batches.ts';
import { proofSentences } from './proof.ts';
import { moldsOf, type Schedule, type ScheduledBatch } from './schedule.ts';
import type { Work } from './work.ts';

/** What to do on which day so that the plan is ready in time. */
export interface Calendar {
  /** In order of days. */
  readonly entries: readonly CalendarEntry[];
  /** What the plan can't have as it stands, a sentence for each line. */
  readonly notices: readonly CalendarNotice[];
  /** Lines whose bars are all on hand, so that nothing is to be done. */
  readonly covered: readonly CalendarNotice[];
  /** What had to be taken as no limit, a sentence each. */
  readonly assumptions: readonly string[];
  /** Where the search for the best plan had to stop early: how far from it this one may be. */
  readonly proof: readonly string[];
}

export interface CalendarEntry extends Work {
  /** The batch that this work is for. */
  readonly batch: ScheduledBatch;
}

export interface CalendarNotice {
  readonly line: PlanLine;
  /** Bars that it is about. */
  readonly bars: number;
  /** Minutes of work that found no day. */
  readonly minutes: number;
  readonly sentence: string;
}

/** What to do on which day, in whole batches. Fails where Plan has no line. */
export function calendar(book: Book, from: Day): Result<Calendar> {
  const today = wholeDay(from);
  return andThen(plannedBatches(book, today), ({ open, past, planned }) => {
    const lines = open.filter(hasLayers);
    return answer({
      entries: planned.batches
        .flatMap((batch) => batch.work.map((task): CalendarEntry => ({ ...task, batch })))
        .sort((a, b) => a.day - b.day),
      notices: [
        ...past.map((line) => notice(line, line.bars, 0, pastSentence(line, today))),
        ...open
          .filter((each) => !hasLayers(each))
          .map(({ line }) =>
            notice(
              line,
              line.bars,
              0,
              `Plan line ${line.planLine} can't be planned: ${line.design.name} has no lines in Layers. Add what one bar is made of.`,
            ),
          ),
        ...missingNotices(planned, lines, book, today),
      ],
      covered: lines.filter(({ barsToMake }) => barsToMake === 0).map(onHandNotice),
      assumptions: unlimited(book, moldsOf(lines)),
      proof: proofSentences(planned.proof),
    });
  });
}

function missingNotices(
  planned: Schedule,
  lines: readonly OpenLine[],
  { settings }: Book,
  from: Day,
): CalendarNotice[] {
  const short = lines.flatMap((open) => {
    const bars = planned.missing.get(open.line) ?? 0;
    return bars === 0 ? [] : [{ open, bars }];
  });
  if (short.length === 0) return [];
  const advice = adviceFor(lines, settings, from);
  return short.map(({ open, bars }) => {
    const readyBy = laterReadyBy({ open, bars }, planned, settings, from);
    return notice(
      open.line,
      bars,
      minutesFor(open.line.design, bars),
      missingSentence({ open, bars }, advice, readyBy, settings),
    );
  });
}

const onHandNotice = ({ line, barsOnHand }: OpenLine): CalendarNotice =>
  notice(
    line,
    barsOnHand,
    0,
    `Nothing to pour for plan line ${line.planLine}: its bars are on hand.`,
  );

const notice = (
  line: PlanLine,
  bars: number,
  minutes: number,
  sentence: string,
): CalendarNotice => ({ line, bars, minutes, sentence });

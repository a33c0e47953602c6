import type { Book, PlanLine } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { minutesFor, unlimited } from './capacity.ts';
import { adviceFor, inTime, laterReadyBy, lateSentence } from './fit-advice.ts';
import { type OpenLine, openPlan, pastSentence } from './plan-lines.ts';
import { type LineSchedule, moldsOf, schedule } from './schedule.ts';
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
}

export interface CalendarEntry extends Work {
  readonly line: PlanLine;
  /** Good bars that this work is for. */
  readonly bars: number;
  /** First day these bars can be sold. */
  readonly readyOn: Day;
}

export interface CalendarNotice {
  readonly line: PlanLine;
  /** Bars that it is about. */
  readonly bars: number;
  /** Minutes of work that found no day. */
  readonly minutes: number;
  readonly sentence: string;
}

/**
 * Works back from each Ready by over drying, setting and pouring, with the molds owned, the minutes of a
 * day and the rest days of Settings. Fails where Plan has no line.
 */
export function calendar(book: Book, from: Day): Result<Calendar> {
  const today = wholeDay(from);
  return andThen(openPlan(book, today), ({ open, past }) => {
    const bare = open.filter(({ line }) => line.design.layers.length === 0);
    const lines = open.filter((line) => !bare.includes(line));
    const placed = schedule(lines, book.settings);
    return answer({
      entries: placed.flatMap((line) => entriesOf(line, today)).sort((a, b) => a.day - b.day),
      notices: [
        ...past.map((line) => notice(line, line.bars, 0, pastSentence(line, today))),
        ...bare.map(({ line }) =>
          notice(
            line,
            line.bars,
            0,
            `Plan line ${line.planLine} can't be planned: ${line.design.name} has no lines in Layers. Add what one bar is made of.`,
          ),
        ),
        ...lateNotices(placed, lines, book, today),
      ],
      covered: lines.filter(({ barsToMake }) => barsToMake === 0).map(onHandNotice),
      assumptions: unlimited(book, moldsOf(lines)),
    });
  });
}

/** The parts of a line that begin in time; the others are in its notice. */
function entriesOf({ open, parts }: LineSchedule, from: Day): CalendarEntry[] {
  return parts
    .filter(({ firstDay }) => firstDay >= from)
    .flatMap(({ bars, work, readyOn }) =>
      work.map((task) => ({ ...task, line: open.line, bars, readyOn })),
    );
}

function lateNotices(
  placed: readonly LineSchedule[],
  lines: readonly OpenLine[],
  { settings }: Book,
  from: Day,
): CalendarNotice[] {
  const late = placed.filter((line) => !inTime(line, from));
  if (late.length === 0) return [];
  const advice = adviceFor(lines, settings, from);
  return late.map((line) => {
    const { open, parts, barsWithoutDay } = line;
    const readyBy = laterReadyBy(line, placed, settings, from);
    const overdue = parts.filter(({ firstDay }) => firstDay < from);
    const work = overdue.flatMap((part) => part.work);
    return notice(
      open.line,
      barsWithoutDay + overdue.reduce((sum, { bars }) => sum + bars, 0),
      work.reduce((sum, { minutes }) => sum + minutes, 0) +
        (barsWithoutDay === 0 ? 0 : minutesFor(open.line.design, barsWithoutDay)),
      lateSentence(line, from, advice, readyBy, settings),
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

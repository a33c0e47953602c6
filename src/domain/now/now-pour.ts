import type { Book, PlanLine } from '../book/book.ts';
import { count } from '../kernel/count.ts';
import { type Day, isoDate } from '../kernel/day.ts';
import { type Advice, byWhen } from './advice.ts';
import { calendar, type CalendarEntry } from '../schedule/calendar.ts';

const words = { shape: 'Shape tiles and embeds for', pour: 'Pour', unmold: 'Unmold' } as const;

/** The next step of each plan line; what can't be ready in time is due now. */
export function pourAdvice(book: Book, today: Day): Advice[] {
  const plan = calendar(book, today);
  if (!plan.ok) return [];
  const next = new Map<PlanLine, CalendarEntry>();
  for (const entry of plan.value.entries) if (!next.has(entry.line)) next.set(entry.line, entry);
  const late = plan.value.notices.filter(({ line }) => line.readyBy >= today);
  return [
    ...late.map(({ line, bars, sentence }): Advice => ({
      kind: 'pour',
      title: `See to ${bars === 0 ? 'plan line' : `${count(bars, 'bar')} of plan line`} ${line.planLine}, ${line.design.name}`,
      reasons: [sentence],
      due: today,
    })),
    ...[...next.values()]
      .filter(({ line }) => !late.some((notice) => notice.line === line))
      .map((entry) => nextStep(entry, today)),
  ];
}

function nextStep({ line, bars, day, task }: CalendarEntry, today: Day): Advice {
  const forFair = line.fair === '' ? '' : ` for ${line.fair}`;
  return {
    kind: 'pour',
    title: `${words[task]} ${count(bars, 'bar')} of ${line.design.name}`,
    reasons: [
      `Do it ${byWhen(day, today)}, since plan line ${line.planLine} is to be ready by ${isoDate(line.readyBy)}${forFair}.`,
    ],
    due: day,
  };
}

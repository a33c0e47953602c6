import type { Book, Design } from '../book/book.ts';
import { count } from '../kernel/count.ts';
import { type Day, isoDate } from '../kernel/day.ts';
import { type Advice, byWhen } from './advice.ts';
import { calendar, type CalendarEntry } from '../schedule/calendar.ts';

const words = { shape: 'Shape tiles and embeds for', pour: 'Pour', unmold: 'Unmold' } as const;

/** The next step of each design; what can't be ready in time is due now. */
export function pourAdvice(book: Book, today: Day): Advice[] {
  const plan = calendar(book, today);
  if (!plan.ok) return [];
  const next = new Map<Design, CalendarEntry>();
  for (const entry of plan.value.entries) {
    if (!next.has(entry.batch.design)) next.set(entry.batch.design, entry);
  }
  const late = plan.value.notices.filter(({ line }) => line.readyBy >= today);
  return [
    ...late.map(({ line, bars, sentence }): Advice => ({
      kind: 'pour',
      title: `See to ${bars === 0 ? 'plan line' : `${count(bars, 'bar')} of plan line`} ${line.planLine}, ${line.design.name}`,
      reasons: [sentence],
      due: today,
    })),
    ...[...next.values()].map((entry) => nextStep(entry, today)),
  ];
}

function nextStep({ batch, day, task }: CalendarEntry, today: Day): Advice {
  return {
    kind: 'pour',
    title: `${words[task]} ${count(batch.bars, 'bar')} of ${batch.design.name}`,
    reasons: batch.lines.map(({ line, bars }, at) => {
      const forFair = line.fair === '' ? '' : ` for ${line.fair}`;
      const readyBy = `to be ready by ${isoDate(line.readyBy)}${forFair}`;
      return at === 0
        ? `Do it ${byWhen(day, today)}, since plan line ${line.planLine} is ${readyBy}.`
        : `${count(bars, 'bar')} of them are for plan line ${line.planLine}, ${readyBy}.`;
    }),
    due: day,
  };
}

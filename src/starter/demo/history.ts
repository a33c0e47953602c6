import { weekday } from '../../domain/schedule/work-days.ts';
import type { Day } from '../../domain/kernel/day.ts';
import { dice } from '../../domain/kernel/dice.ts';
import type { Diary } from './diary.ts';
import { mishapsOn } from './mishaps.ts';
import { nextPour, recordPour } from './pours.ts';
import { Purchases } from './purchases.ts';
import { barsAtFair, barsOfTheWeek, sellOn } from './sales.ts';
import { demoDay, demoFairs, firstDay } from './season.ts';

/** The invented maker. */
const BY = 'Wren';
const SEED = 20251201;

/** Lives through the invented year day by day: deliveries, pours, sales, and now and then a mishap. */
export function liveThroughTheYear(diary: Diary): void {
  const roll = dice(SEED);
  const purchases = new Purchases(diary, roll);
  const batches = numbering('B', 3);
  const sales = numbering('S', 3);
  for (let day = firstDay; day < demoDay; day += 1) {
    if (day === firstDay) purchases.order(day, false);
    else if (weekday(day) === 1) purchases.order(day);
    purchases.receive(day);
    mishapsOn(diary, day, BY);
    if (isPourDay(day)) pourIfNeeded(diary, day, roll, batches);
    const fair = demoFairs.find(({ opens }) => opens === day);
    const stall = { soldOn: day, fair: String(fair?.fair ?? ''), by: BY };
    if (fair) sellOn(diary, stall, barsAtFair(day), roll, sales.next);
    else if (weekday(day) === 5) sellOn(diary, stall, barsOfTheWeek(day), roll, sales.next);
  }
}

/** Tuesdays and Thursdays; every working day in the first fortnight, when the shelf is still empty. */
const isPourDay = (day: Day): boolean =>
  day < firstDay + 12 ? weekday(day) <= 5 : weekday(day) === 2 || weekday(day) === 4;

function pourIfNeeded(diary: Diary, day: Day, roll: () => number, batches: Numbering): void {
  const wanted = nextPour(diary.book(), day);
  if (wanted === undefined) return;
  const pour = { ...wanted, poured: day, by: BY, batch: batches.peek() };
  if (recordPour(diary, pour, roll)) batches.next();
}

interface Numbering {
  readonly peek: () => string;
  readonly next: () => string;
}

function numbering(letter: string, digits: number): Numbering {
  let count = 0;
  const id = (number: number) => `${letter}-${String(number).padStart(digits, '0')}`;
  return {
    peek: () => id(count + 1),
    next: () => {
      count += 1;
      return id(count);
    },
  };
}

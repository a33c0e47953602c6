import { count } from '../kernel/count.ts';
import type { Method } from './method.ts';

const SMOOTHED = 'the average of what was sold, the newest weighing most';

/** What each method takes the next periods for, by how its name begins; the first that fits holds. */
const meanings: readonly (readonly [begins: string, meaning: string])[] = [
  ['average', 'the average of all periods so far'],
  ['naive', 'the same as the last period'],
  ['seasonal naive', 'the same as a season ago'],
  ['lumpy demand', 'how often anything is sold, times how many are sold then'],
  ['simple smoothing', SMOOTHED],
  ['Holt, damped trend', `${SMOOTHED}, and its trend, which fades`],
  ['Holt (trend)', `${SMOOTHED}, and its trend`],
  ['seasonal smoothing', `${SMOOTHED}, and what each part of the season has more or less`],
  ['Holt-Winters', `${SMOOTHED}, its trend, and what each part of the season has more or less`],
];

/** A method in plain words, with why it was chosen. */
export function inWords(
  { name }: Method,
  { known, isLumpy }: { readonly known: number; readonly isLumpy: boolean },
): string {
  const meaning = meanings.find(([begins]) => name.startsWith(begins))?.[1] ?? name;
  return `Each period is taken for ${meaning}. ${whyChosen(known, isLumpy)}`;
}

/** Fewer values than this tell nothing but their average. */
export const ENOUGH_TO_CHOOSE = 4;

function whyChosen(known: number, isLumpy: boolean): string {
  if (known < ENOUGH_TO_CHOOSE) return `${count(known, 'figure')} tell nothing but their average.`;
  return isLumpy
    ? 'Many periods are empty; of the ways tried this one foresaw the newest best from those before.'
    : 'Of the ways tried this one came nearest to the history, the fewer figures it needs the better.';
}

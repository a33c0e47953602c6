import type { Book, Item } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { count } from '../kernel/count.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { compareNames } from '../kernel/names.ts';
import { historyOf } from '../stock/ledger-index.ts';
import { live } from '../stock/reversals.ts';
import type { Advice } from './advice.ts';

/** A quarter of a year: common practice for a small store counted by hand. */
const STALE_DAYS = 90;
/** Fewer uses than this leave little to go wrong. */
const MANY_USES = 8;
/** A count can always wait for a quieter day, but not for ever. */
const WAIT_DAYS = 3;

interface Stale {
  readonly item: Item;
  readonly days: number;
  readonly uses: number;
  readonly wasCounted: boolean;
}

/** Materials used many times since they were last counted, all in one advice: a shelf is counted at once. */
export function countAdvice(book: Book, today: Day): Advice[] {
  const stale = [...book.materials.values()]
    .map((material) => staleness(book, itemOfMaterial(material), today))
    .filter(({ days, uses }) => days >= STALE_DAYS && uses >= MANY_USES)
    .sort((a, b) => b.uses - a.uses || compareNames(a.item.name, b.item.name));
  const [most, ...others] = stale;
  if (most === undefined) return [];
  const { item, uses, days, wasCounted } = most;
  const more =
    others.length === 0 ? '' : ` ${count(others.length, 'more is', 'more are')} as long uncounted.`;
  return [
    {
      kind: 'count',
      title: `Count ${item.name}`,
      reasons: [
        wasCounted
          ? `It was used ${count(uses, 'time')} since its last count ${count(days, 'day')} ago.${more}`
          : `It was used ${count(uses, 'time')} in ${count(days, 'day')} and never counted.${more}`,
      ],
      due: today + WAIT_DAYS,
    },
  ];
}

/** Uses and days since the last count, or since the first lot where it was never counted. */
function staleness(book: Book, item: Item, today: Day): Stale {
  const { lots, moves } = historyOf(book, item);
  const past = live(moves.filter((move) => wholeDay(move.when) <= today));
  const counts = past.filter(({ reason }) => reason === 'counted').map(({ when }) => when);
  const wasCounted = counts.length > 0;
  const since = wasCounted ? Math.max(...counts) : (lots[0]?.received ?? today);
  const uses = past.filter(({ reason, when }) => reason === 'used' && when > since).length;
  return { item, uses, days: today - wholeDay(since), wasCounted };
}

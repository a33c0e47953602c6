import { html, nothing } from 'lit';
import type { Taken } from '../../src/domain/ledger/take-stock.ts';
import { day, ledgerAmount } from '../format.ts';
import { noticeBar } from '../parts/notice.ts';

/** Names the lots that a pour takes from past their best before, and what to do with those; nothing where none is. */
export function pastDateNotice(pastDate: readonly Taken[]) {
  if (pastDate.length === 0) return nothing;
  return noticeBar(
    { kind: 'warn', text: 'Past its best before on the day of the pour:' },
    html`<ul>
        ${pastDate.map(
          ({ item, lot, bestBefore, quantity }) =>
            html`<li>
              ${item.name}, lot
              ${lot}${bestBefore === undefined ? '' : `, best before ${day(bestBefore)}`}:
              ${ledgerAmount(quantity, item.unit)}
            </li>`,
        )}
      </ul>
      <p>
        Look at it and smell it first. If you don’t use it, throw it away and count that shelf
        without it: the next lot is then taken.
      </p>`,
  );
}

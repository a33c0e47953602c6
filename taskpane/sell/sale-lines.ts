import { css, html, nothing, type TemplateResult } from 'lit';
import { count } from '../../src/domain/kernel/count.ts';
import type { Exact } from '../../src/domain/kernel/exact.ts';
import { currencyDecimals } from '../../src/domain/money/currency.ts';
import { plain } from '../format.ts';
import { numberField } from '../parts/number-field.ts';
import { tapCount } from '../parts/tap-count.ts';
import { moneyIn, readTyped, readWhole } from '../typed-number.ts';
import type { SaleRow } from './day-of-draft.ts';
import type { TypedSale } from './draft.ts';

/** Tells one line of a design anew: the `at`-th. */
export type TellSale = (design: string, at: number, told: Partial<TypedSale>) => void;

/** A design's line: its stock, taps for the bars, the price; more lines for other prices. */
export function saleLines(
  row: SaleRow,
  number: number,
  currency: string,
  tellSale: TellSale,
): TemplateResult {
  const { design, stock, lines } = row;
  const { name } = design;
  const isTooMany = tooMany(row);
  const wasSold = lines.some(({ bars }) => bars.trim() !== '');
  return html`<li class="sale ${wasSold ? 'sold' : ''}">
    <div class="spread">
      <h4>${name}</h4>
      <p class="small quiet">${count(stock, 'bar')} in stock</p>
    </div>
    ${lines.map((line, at) =>
      saleLine(row, { line, at, id: `${String(number)}-${String(at)}`, currency }, tellSale),
    )}
    ${
      isTooMany
        ? html`<p class="small error">
            More than the ${plain(stock)} in stock. Record the pour first, or count the shelf.
          </p>`
        : nothing
    }
    ${
      wasSold
        ? html`<button
            class="link small"
            @click=${() => {
              tellSale(name, lines.length, { bars: '' });
            }}
          >
            Some at another price<span class="unseen">: ${name}</span>
          </button>`
        : nothing
    }
  </li>`;
}

/** One line of a design: the `at`-th. */
interface ShownLine {
  readonly line: TypedSale;
  readonly at: number;
  readonly id: string;
  readonly currency: string;
}

function saleLine(row: SaleRow, shown: ShownLine, tellSale: TellSale): TemplateResult {
  const { line, at, id } = shown;
  const { name } = row.design;
  const price = shownPrice(row.design.price, shown.currency);
  const again = at === 0 ? '' : `, price ${String(at + 1)}`;
  const bars = line.bars.trim() === '' ? undefined : readWhole(line.bars, `Bars of ${name}`, 1);
  const typed = line.price;
  const amountOf = moneyIn(shown.currency);
  const asked = typed === undefined ? undefined : readTyped(typed, `Price of ${name}`, amountOf);
  const barsError = bars?.ok === false ? bars.failure.sentence : undefined;
  return html`<div class="figures">
      ${tapCount({
        id: `bars-${id}`,
        what: `Bars of ${name}${again}`,
        value: line.bars,
        error: barsError ?? (tooMany(row) ? 'More than in stock.' : undefined),
        onTyped: (text) => {
          tellSale(name, at, { bars: text });
        },
      })}
      ${numberField({
        id: `price-${id}`,
        label: `Price of ${name}${again}`,
        isLabelUnseen: true,
        unit: 'each',
        value: typed ?? price,
        amountOf,
        error: asked?.ok === false ? asked.failure.sentence : undefined,
        onTyped: (text) => {
          tellSale(name, at, { price: text.trim() === price ? undefined : text });
        },
      })}
    </div>
    ${
      barsError === undefined
        ? nothing
        : html`<p id="bars-${id}-error" class="small error">${barsError}</p>`
    }`;
}

const shownPrice = (price: Exact | undefined, currency: string): string =>
  price === undefined ? '' : price.toFixed(currencyDecimals(currency));

function tooMany({ stock, lines }: SaleRow): boolean {
  const bars = lines.flatMap(({ bars: typed }) => {
    const read = readWhole(typed, '', 1);
    return read.ok ? [read.value] : [];
  });
  return stock.lt(bars.reduce((total, some) => total + some, 0));
}

/** Rows of names that are easy to run the eye down. */
export const saleLooks = css`
  h4 {
    margin: 0;
    font-size: inherit;
    font-weight: var(--fontWeightSemibold);
  }
  .sale {
    display: grid;
    gap: 6px;
    padding: 10px 0 10px 10px;
    border-top: 1px solid var(--colorNeutralStroke2);
    border-left: 3px solid transparent;
  }
  .sale.sold {
    border-left-color: var(--colorCompoundBrandBackground);
  }
  .figures {
    display: grid;
    grid-template-columns: minmax(124px, 1fr) minmax(0, 1fr);
    gap: 12px;
    align-items: start;
  }
`;

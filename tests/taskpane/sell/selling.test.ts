import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { Exact, exact } from '../../../src/domain/kernel/exact.ts';
import type { SalesResult } from '../../../src/domain/sell/fair-result.ts';
import { dayOfDraft, saleRows, soFar } from '../../../taskpane/sell/day-of-draft.ts';
import {
  keepSellDraft,
  newSellDraft,
  restoreSellDraft,
  type SellDraft,
  sellSteps,
  withPasted,
  withSale,
} from '../../../taskpane/sell/draft.ts';
import { resultLines, resultSentence } from '../../../taskpane/sell/result-words.ts';
import { sellingDays } from '../../../taskpane/sell/selling-days.ts';
import { bookOf } from '../book-of.ts';
import { marketWorkshop } from '../market-workshop.ts';
import { rowsOf, withRows } from '../small-workshop.ts';

const book = bookOf(marketWorkshop);
const who = { today: readDay('2026-11-25') ?? 0, by: 'Ada' };
const draft: SellDraft = {
  ...newSellDraft('S-1', '2026-11-25'),
  lines: [{ design: 'Plain Wave', bars: '2', price: undefined }],
};

describe('dayOfDraft', () => {
  it('takes the design’s own price, and no fees where none are typed', () => {
    const day = dayOfDraft(book, draft, who);
    expect(day.ok && day.value).toMatchObject({ id: 'S-1', fair: '', by: 'Ada' });
    expect(day.ok && day.value.lines[0]?.priceEach.toString()).toBe('4');
    expect(day.ok && day.value.fees.toString()).toBe('0');
  });

  const line = (bars: string, price?: string) => [{ design: 'Plain Wave', bars, price }];
  it.each<readonly [Partial<SellDraft>, string]>([
    [{ soldOn: '' }, 'Date sold is blank. Choose the day.'],
    [
      { soldOn: '2026-11-26' },
      'Date sold is 26 Nov 2026, which is still to come. Choose today or before.',
    ],
    [{ fair: 'Moon Fair' }, '"Moon Fair" is no longer in Fairs. Choose another, or put it back.'],
    [{ lines: [] }, 'Nothing is sold yet. Tap + or type the bars of a design.'],
    [{ lines: line(' ', '4') }, 'Nothing is sold yet. Tap + or type the bars of a design.'],
    [{ lines: line('0') }, 'Bars of Plain Wave is 0. Type a whole number, 1 or more.'],
    [{ lines: line('1', '-4') }, 'Price of Plain Wave is "-4". Type a plain number, 0 or more.'],
    [{ lines: line('1', '') }, 'Price of Plain Wave is blank. Type a number, 0 or more.'],
    [{ fees: '-1' }, 'Fees of the day is "-1". Type a plain number, 0 or more.'],
    [
      { lines: [{ design: 'Gone', bars: '1', price: '1' }] },
      '"Gone" is no longer in Designs. Put it back, or blank its bars.',
    ],
  ])('%j is answered with a sentence', (told, sentence) => {
    const day = dayOfDraft(book, { ...draft, ...told }, who);
    expect(!day.ok && day.failure.sentence).toBe(sentence);
  });
});

describe('saleRows', () => {
  it('shows designs in stock, and what was there on the day', () => {
    const stocks = (soldOn: string) =>
      saleRows(book, { ...draft, lines: [], soldOn }, who.today).map(({ design, stock }) => [
        design.name,
        Number(stock),
      ]);
    expect(stocks('2026-11-25')).toEqual([
      ['Harbour Light', 10],
      ['Plain Wave', 6],
    ]);
    expect(stocks('2026-10-06')).toEqual([['Plain Wave', 6]]);
  });

  it('adds up what can be read so far', () => {
    const lines = [...draft.lines, { design: 'Harbour Light', bars: 'x', price: '1' }];
    const { bars, takings } = soFar(book, { ...draft, lines });
    expect([bars, takings.toString()]).toEqual([2, '8']);
  });
});

describe('lines', () => {
  it('are told by design and place, and added where they are not there', () => {
    const one = withSale([], 'Plain Wave', 0, { bars: '1' });
    const two = withSale(one, 'plain wave', 1, { bars: '2', price: '3' });
    expect(two.map(({ bars, price }) => [bars, price])).toEqual([
      ['1', undefined],
      ['2', '3'],
    ]);
    expect(withSale(two, 'Plain Wave', 1, { bars: '5' })[1]?.bars).toBe('5');
    expect(withPasted(two, [{ design: 'Plain Wave', bars: '9', price: undefined }])).toEqual([
      { design: 'Plain Wave', bars: '9', price: undefined },
    ]);
  });
});

describe('a kept draft', () => {
  it('comes back as it was, whatever was typed', () => {
    const sale = fc.record({
      design: fc.string(),
      bars: fc.string(),
      price: fc.option(fc.string(), { nil: undefined }),
    });
    const some = fc.record({
      step: fc.constantFrom(...sellSteps),
      fair: fc.string(),
      fees: fc.string(),
      pasted: fc.string(),
      lines: fc.array(sale),
    });
    fc.assert(
      fc.property(some, (told) => {
        const kept = keepSellDraft({ ...draft, ...told });
        const back = restoreSellDraft(kept);
        expect(back && keepSellDraft(back)).toBe(kept);
      }),
    );
  });

  it.each([
    ['"step":"enter"', '"step":"weigh"'],
    ['"bars":"2"', '"bars":2'],
    ['"form":1', '"form":0'],
    ['"lines":[', '"lines":[7,'],
  ])('is not taken where %s reads %s', (from, to) => {
    const kept = keepSellDraft(draft);
    expect(kept).toContain(from);
    expect(restoreSellDraft(kept.replace(from, to))).toBeUndefined();
  });
});

describe('sellingDays', () => {
  it('gathers the lines of each day, newest first, and knows what was taken back', () => {
    const tables = withRows(marketWorkshop, 'Sales', () =>
      rowsOf([
        'S-1.01|2026-11-01|Plain Wave|2|4|Quay Fair|0',
        'S-1.02|2026-11-01|Harbour Light|1|7|Quay Fair|0',
        'S-2.01|2026-11-02|Plain Wave|3|4||0',
        'S-2.01.R|2026-11-02|Plain Wave|-3|4||0',
        'by hand|2026-11-03|Plain Wave|1|4||0',
      ]),
    );
    expect(
      sellingDays(bookOf(tables)).map(({ id, bars, isUndone }) => [id, bars, isUndone]),
    ).toEqual([
      ['S-2', 3, true],
      ['S-1', 3, false],
    ]);
  });
});

describe('the result in words', () => {
  const result: SalesResult = {
    bars: exact(8),
    takings: exact(49.5),
    tax: exact(4.5),
    fees: exact(1.5),
    costOfBars: exact(17.3),
    stallAndTravel: exact(52),
    profit: exact(-25.8),
    perHour: exact(-3.225),
    barsToBreakEven: exact(16),
  };
  it.each<readonly [Partial<SalesResult>, string]>([
    [
      {},
      'It cost $25.80 more than it brought in. 16 bars at these prices pay for stall and travel; you sold 8.',
    ],
    [
      { profit: exact(40), perHour: exact(5) },
      'It brought home $40.00, which is $5.00 an hour. 16 bars at these prices pay for stall and travel; you sold 8.',
    ],
    [{ profit: exact(9), perHour: undefined, stallAndTravel: exact(0) }, 'It brought home $9.00.'],
    [
      { barsToBreakEven: undefined },
      'It cost $25.80 more than it brought in. At these prices a bar brings in less than the $2.16 it costs, so no number of bars would pay for the stall.',
    ],
    [{ bars: new Exact(0) }, 'No bars are sold.'],
  ])('%j', (told, sentence) => {
    expect(resultSentence({ ...result, ...told }, 'USD')).toBe(sentence);
  });

  it('lists costs with a minus and leaves out what is nothing', () => {
    expect(resultLines({ ...result, fees: exact(0) }, 'USD')).toEqual([
      ['Bars sold', '8'],
      ['Takings', '$49.50'],
      ['Sales tax', '−$4.50'],
      ['Full cost of the bars', '−$17.30'],
      ['Stall, travel and other', '−$52.00'],
      ['Loss', '$25.80'],
      ['Per hour', '−$3.23'],
    ]);
  });
});

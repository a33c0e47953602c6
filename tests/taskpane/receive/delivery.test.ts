import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { deliveryOfDraft } from '../../../taskpane/receive/delivery-of-draft.ts';
import {
  blankLot,
  freightShares,
  keepReceiveDraft,
  newReceiveDraft,
  type ReceiveDraft,
  receiveSteps,
  restoreReceiveDraft,
  type TypedLot,
} from '../../../taskpane/receive/draft.ts';
import { unitMoney } from '../../../taskpane/format.ts';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { bookOf } from '../book-of.ts';
import { smallWorkshop } from '../small-workshop.ts';

const book = bookOf(smallWorkshop);
const today = readDay('2026-11-25') ?? 0;
const line: TypedLot = { ...blankLot, material: 'Clear base', packs: '2', paid: '18' };
const draft: ReceiveDraft = { ...newReceiveDraft('R-1', '2026-11-25'), lines: [line] };

describe('deliveryOfDraft', () => {
  it('takes packs of the pack size, or a quantity as it stands, and passes over blank lines', () => {
    const lines = [line, blankLot, { ...line, packs: '', quantity: '1 500,5' }];
    const delivery = deliveryOfDraft(book, { ...draft, lines }, today);
    expect(delivery.ok && delivery.value.lines.map(({ quantity }) => Number(quantity))).toEqual([
      2000, 1500.5,
    ]);
    expect(delivery.ok && delivery.value.freight.toString()).toBe('0');
  });

  const told = (lot: Partial<TypedLot>) => ({ lines: [{ ...line, ...lot }] });
  it.each<readonly [Partial<ReceiveDraft>, string]>([
    [{ received: '' }, 'Date received is blank. Choose the day.'],
    [
      { received: '2026-11-26' },
      'Date received is 26 Nov 2026, which is still to come. Choose today or before.',
    ],
    [{ lines: [blankLot] }, 'Nothing has come yet. Choose the first material.'],
    [told({ material: '' }), 'Choose the material of line 1, or remove the line.'],
    [
      told({ material: 'Gone' }),
      '"Gone" is no longer in Materials. Put it back, or choose another.',
    ],
    [told({ quantity: '5' }), 'Give packs or a quantity of Clear base, not both.'],
    [told({ packs: '' }), 'How much of Clear base came? Type packs, or a quantity.'],
    [told({ packs: '0' }), 'Packs of Clear base is 0. Type more than 0.'],
    [told({ packs: '-1' }), 'Packs of Clear base is "-1". Type a plain number, 0 or more.'],
    [told({ paid: '' }), 'Paid for Clear base is blank. Type a number, 0 or more.'],
    [{ freight: 'x' }, 'Freight is "x". Type a plain number, 0 or more.'],
  ])('%j is answered with a sentence', (change, sentence) => {
    const delivery = deliveryOfDraft(book, { ...draft, ...change }, today);
    expect(!delivery.ok && delivery.failure.sentence).toBe(sentence);
  });
});

describe('a kept delivery', () => {
  it('comes back as it was, whatever was typed', () => {
    const lot = fc.record({
      material: fc.string(),
      packs: fc.string(),
      quantity: fc.string(),
      paid: fc.string(),
      bestBefore: fc.string(),
      lot: fc.string(),
    });
    const some = fc.record({
      step: fc.constantFrom(...receiveSteps),
      supplier: fc.string(),
      freight: fc.string(),
      shareBy: fc.constantFrom(...freightShares),
      lines: fc.array(lot, { minLength: 1 }),
    });
    fc.assert(
      fc.property(some, (change) => {
        const kept = keepReceiveDraft({ ...draft, ...change });
        const back = restoreReceiveDraft(kept);
        expect(back && keepReceiveDraft(back)).toBe(kept);
      }),
    );
  });

  it.each([
    ['"step":"enter"', '"step":"weigh"'],
    ['"shareBy":"value"', '"shareBy":"luck"'],
    ['"packs":"2"', '"packs":2'],
    ['"lines":[', '"lines":[null,'],
  ])('is not taken where %s reads %s', (from, to) => {
    const kept = keepReceiveDraft(draft);
    expect(kept).toContain(from);
    expect(restoreReceiveDraft(kept.replace(from, to))).toBeUndefined();
  });
});

describe('unitMoney', () => {
  // Minor units: ISO 4217, List One; four digits are ours.
  it.each([
    ['0.010125', 'USD', 'g', '$0.01013 a g'],
    ['0.16', 'USD', 'each', '$0.16 each'],
    ['12.3456', 'EUR', 'ml', '€12.35 a ml'],
    ['1.5', 'JPY', 'g', '¥1.5 a g'],
  ])('%s %s for a %s reads %s', (value, currency, unit, text) => {
    expect(unitMoney(new Exact(value), currency, unit)).toBe(text);
  });
});

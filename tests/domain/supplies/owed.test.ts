import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { supplies } from '../../../src/domain/supplies/supplies.ts';
import type { Tables } from '../../support/small-book.ts';
import { bookOf, on, season, sound } from './season-book.ts';

/** What SUPPLIES says of the base of a plan, from 1 November. */
function base(tables: Tables) {
  const plan = sound(supplies(bookOf(tables), on('2026-11-01')));
  const line = plan.lines.find(({ material }) => material.name === 'Base');
  const [gross, onHand, net, packs] = [line?.gross, line?.onHand, line?.net, line?.packs].map(
    (figure) => figure?.toNumber(),
  );
  return { gross, onHand, net, packs };
}

describe('SUPPLIES', () => {
  const plan = [['P1', 'Brick', 2, '2026-12-05']];
  const lots: readonly Cell[][] = [['L1', 'Base', '2026-10-01', 100, 1, '']];
  const moves = [['E1', '2026-10-02', 'used', 'Base', -150, '', '', '']];

  it('owes stock below zero to what took it (contract §5)', () => {
    expect(base(season({ plan, lots, moves }))).toEqual({
      gross: 200,
      onHand: -50,
      net: 250,
      packs: 1,
    });
    // 200 g come before the need: they repay the 50 g first.
    const coming = [...lots, ['L2', 'Base', '2026-11-20', 200, 1, '']];
    expect(base(season({ plan, lots: coming, moves }))).toMatchObject({ onHand: -50, net: 50 });
  });

  it('takes nothing off On hand for a lot that is yet to come and goes off before the need', () => {
    const coming = [['L1', 'Base', '2026-11-02', 500, 1, '2026-11-10']];
    expect(base(season({ plan, lots: coming }))).toMatchObject({ onHand: 0, net: 200 });
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { netWeight } from '../../../src/domain/label/net-weight.ts';
import { allowableVariationG, tolerableErrorG } from '../../../src/domain/label/short-weight.ts';
import { refusal, sound } from './label-book.ts';

const net = (g: string | number) => sound(netWeight(new Exact(g)));

describe('netWeight', () => {
  // REFERENCES G11: conversions rounded down so that they never overstate (UPLR, by NIST).
  it.each([
    ['113.398092', '113 g', '3.99 oz'],
    ['113.3980925', '113 g', '4 oz'],
    ['99.2233', '99 g', '3.49 oz'],
    ['99.223330938', '99 g', '3.5 oz'],
    // 4.5 oz is 127.5728540625 g.
    ['127.572854', '127 g', '4.49 oz'],
    ['127.573', '127 g', '4.5 oz'],
    ['100', '100 g', '3.52 oz'],
    ['90', '90 g', '3.17 oz'],
    ['9.96', '9.9 g', '0.35 oz'],
  ])('%s g is %s, %s', (g, metric, avoirdupois) => {
    expect(net(g)).toEqual({ metric, avoirdupois, statement: `Net Wt ${avoirdupois} (${metric})` });
  });

  // 21 CFR 701.13(j) by REFERENCES G7: total ounces, then pounds and ounces in brackets.
  it.each([
    ['453.59237', '16 oz (1 lb)'],
    ['680.388555', '24 oz (1 lb 8 oz)'],
    // From four pounds on, pounds first: from memory.
    ['1814.36948', '4 lb'],
    ['1900', '4 lb 3.02 oz'],
  ])('%s g is %s', (g, avoirdupois) => {
    expect(net(g).avoirdupois).toBe(avoirdupois);
  });

  it.each(['0', '-5', '0.2'])('refuses %s g', (g) => {
    expect(refusal(netWeight(new Exact(g))).sentence).toMatch(/can't be stated/);
  });

  it('never overstates, and understates by less than a gram and a hundredth of an ounce', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1000, max: 450_000 }), (milligrams) => {
        const g = new Exact(milligrams).div(1000).times(1.007);
        const { metric, avoirdupois } = net(g.toString());
        const statedG = new Exact(metric.replace(' g', ''));
        const statedOz = new Exact(avoirdupois.replace(/ oz.*$/u, ''));
        const ozInG = statedOz.times('28.349523125');
        expect(statedG.lte(g) && statedG.plus(1).gt(g)).toBe(true);
        expect(ozInG.lte(g) && ozInG.plus('0.28349523125').gt(g)).toBe(true);
      }),
    );
  });
});

describe('tolerances for one bar', () => {
  // 76/211/EEC, Annex I, 2.4: REFERENCES §7d with its boundary checks and examples.
  it.each([
    [35, '3.2'],
    [50, '4.5'],
    [50.1, '4.5'],
    [90, '4.5'],
    [100, '4.5'],
    [120, '5.4'],
    [200, '9'],
    [300, '9'],
    [500, '15'],
    [1000, '15'],
    [2000, '30'],
  ])('EU: %s g may be short by %s g', (netG, expected) => {
    expect(tolerableErrorG(new Exact(netG))?.toString()).toBe(expected);
  });

  it('EU: has none outside 5 g to 10 kg', () => {
    expect(tolerableErrorG(new Exact(4.9))).toBeUndefined();
    expect(tolerableErrorG(new Exact(10_001))).toBeUndefined();
  });

  // REFERENCES §7d: 3 oz is allowed 0.25 oz, about 7.2 g (a manual quoting HB 133's Table 2-5).
  it.each([
    [85.05, '7.2'],
    // From memory: the rest of the table is recalled, not seen.
    [30, '3'],
    [120, '9'],
    [489, '19.9'],
  ])('US: %s g may be short by %s g', (netG, expected) => {
    expect(allowableVariationG(new Exact(netG))?.toString()).toBe(expected);
  });

  it('US: has none above its recalled table', () => {
    expect(allowableVariationG(new Exact(490))).toBeUndefined();
  });
});

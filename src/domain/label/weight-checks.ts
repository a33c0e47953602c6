import type { Design } from '../book/book.ts';
import { notBelowZero, zero } from '../kernel/exact.ts';
import type { Exact } from '../kernel/exact.ts';
import { against, type CheckLine, unknownLine } from './check-line.ts';
import type { Composition } from './composition.ts';
import { netWeight } from './net-weight.ts';
import { allowableVariationG, tolerableErrorG } from './short-weight.ts';

/**
 * The bar's weight by the recipe against Net g: on average it may not be short at all; how far one
 * bar may be short is what 76/211/EEC tolerates, or in the US NIST Handbook 133 (from memory, so that
 * line never comes to `ok` on the strength of its limit). Weighing real bars decides.
 */
export function weightChecks(design: Design, composition: Composition): CheckLine[] {
  const { netG } = design;
  if (netG === undefined) {
    return [
      unknownLine(
        'Net weight',
        'Net g is blank',
        `Weigh ten bars and fill in Net g in Designs; by the recipe one weighs ${composition.totalG.toDecimalPlaces(1).toString()} g`,
      ),
    ];
  }
  const statement = netWeight(netG);
  const shortG = notBelowZero(netG.minus(composition.totalG)).toDecimalPlaces(3);
  const unsure = composition.unweighed.length > 0;
  const average = against(shortG, zero);
  return [
    {
      check: 'Bar weight by the recipe, g (not below Net g)',
      value: composition.totalG.toDecimalPlaces(3),
      limit: netG,
      // A bar with pieces that nobody weighed is heavier than worked out, so only short is unsure.
      result: unsure && average === 'over' ? 'unknown' : average,
      source: `Net g in Designs${statement.ok ? ` (${statement.value.statement})` : ''}; the average may not be less: 76/211/EEC, Annex I, 1.1; NIST Handbook 133`,
    },
    errorLine('One bar short of Net g by, g (EU)', shortG, tolerableErrorG(netG), {
      source: 'Tolerable negative error, 76/211/EEC, Annex I, 2.4; no bar short by twice that',
      isSure: !unsure,
    }),
    errorLine('One bar short of Net g by, g (US)', shortG, allowableVariationG(netG), {
      source: 'Maximum allowable variation, NIST Handbook 133, Table 2-5 (from memory: look it up)',
      isSure: false,
    }),
  ];
}

function errorLine(
  check: string,
  shortG: Exact,
  limitG: Exact | undefined,
  { source, isSure }: { readonly source: string; readonly isSure: boolean },
): CheckLine {
  if (limitG === undefined) return unknownLine(check, shortG, `${source}: outside its table`);
  const result = against(shortG, limitG);
  const isTrusted = isSure || shortG.isZero();
  return {
    check,
    value: shortG,
    limit: limitG,
    result: isTrusted ? result : 'unknown',
    source,
  };
}

import type { Material } from '../book/book.ts';
import type { Exact } from '../kernel/exact.ts';
import { against, type CheckLine, unknownLine } from './check-line.ts';
import { type Composition, percentOf } from './composition.ts';

const SOURCE = "Max % in Materials, as entered from the supplier's document";

/**
 * Each material's percent of the bar against its Max %. A fragrance or a colourant without one is
 * `unknown`; other materials are only held against a limit that was entered. No limit is built in:
 * those of a fragrance are in its supplier's certificate for the category of soap.
 */
export function limitChecks({ materials, totalG, unweighed }: Composition): CheckLine[] {
  const unsure = unweighed.length > 0;
  return materials
    .map(({ material, g }) => ({ material, percent: percentOf(g, totalG) }))
    .filter(({ material }) => material.maxPercent !== undefined || needsLimit(material))
    .sort((a, b) => rank(a.material) - rank(b.material))
    .map(({ material, percent }) => limitLine(material, percent, unsure));
}

function limitLine(material: Material, percent: Exact, unsure: boolean): CheckLine {
  const check =
    material.kind === 'fragrance'
      ? `Fragrance load, % of the bar: ${material.name}`
      : `Share, % of the bar: ${material.name}`;
  const { maxPercent } = material;
  if (maxPercent === undefined)
    return unknownLine(check, percent, "Fill in Max % in Materials from the supplier's document");
  const result = against(percent, maxPercent);
  // A bar that weighs more than is known holds a smaller share, so only `ok` is sure.
  return {
    check,
    value: percent,
    limit: maxPercent,
    result: unsure && result === 'over' ? 'unknown' : result,
    source: SOURCE,
  };
}

const needsLimit = ({ kind }: Material): boolean => kind === 'fragrance' || kind === 'colourant';

const kinds: readonly Material['kind'][] = ['fragrance', 'colourant', 'extra', 'base'];
const rank = ({ kind }: Material): number => kinds.indexOf(kind);

import type { Material } from '../book/book.ts';
import type { Exact } from '../kernel/exact.ts';
import { hundred } from '../kernel/exact.ts';
import { type CheckLine, unknownLine } from './check-line.ts';
import type { Composition } from './composition.ts';
import { inciOf } from './inci.ts';

const RULE = '21 CFR 701.3; Reg. (EC) 1223/2009, Art. 19(1)(g)';

/** Whether every material has its label names and its weight; one `ok` line where all have. */
export function nameChecks({ materials, unweighed, densityAssumed }: Composition): CheckLine[] {
  const troubles = materials.flatMap(({ material }) => inciTrouble(material));
  const inci: CheckLine[] =
    troubles.length > 0 || materials.length === 0
      ? troubles
      : [
          {
            check: 'INCI names',
            value: `${materials.length} of ${materials.length} materials`,
            limit: 'all',
            result: 'ok',
            source: RULE,
          },
        ];
  return [
    ...inci,
    ...unweighed.map(({ name }) =>
      unknownLine(
        `Weight: ${name}`,
        'counted by the piece',
        'Stock it in g or ml in Materials, so that its share can be worked out',
      ),
    ),
    ...densityAssumed.map(({ name }) =>
      unknownLine(
        `Density: ${name}`,
        '1 g/ml assumed',
        'Weigh 10 ml and fill in Density g/ml in Materials',
      ),
    ),
  ];
}

function inciTrouble(material: Material): CheckLine[] {
  const check = `INCI: ${material.name}`;
  if (material.inci.trim() === '')
    return [unknownLine(check, 'missing', `Fill in INCI in Materials (${RULE})`)];
  const inci = inciOf(material);
  if (!inci.ok) return [unknownLine(check, material.inci, inci.failure.sentence)];
  const { namedPercent } = inci.value;
  return namedPercent.eq(hundred) ? [] : [unnamedRest(check, namedPercent)];
}

const unnamedRest = (check: string, namedPercent: Exact): CheckLine => ({
  check: `${check}, % named`,
  value: namedPercent,
  limit: hundred,
  result: 'unknown',
  source: 'The rest stands on no label: ask the supplier what it is',
});

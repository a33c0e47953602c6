import type { Material } from '../book/book.ts';
import { type Exact, hundred, sum } from '../kernel/exact.ts';
import { answer, type Result, notYet, wrong } from '../kernel/result.ts';
import { readShares } from './shares.ts';

/** A material's label names with percents of the material by weight. */
export interface InciParts {
  readonly parts: readonly { readonly name: string; readonly percent: Exact }[];
  /** Percents named, all together; what is left to 100 stands on no label. */
  readonly namedPercent: Exact;
}

/**
 * Reads a material's INCI: one name stands for the whole material, several need percents. Percents
 * may fall short of 100: each keeps its share of the whole material, and the rest stays unnamed
 * (CHECKS says so) rather than being shared out among the names. `#N/A` where it can't be used yet.
 */
export function inciOf(material: Material): Result<InciParts> {
  const shares = readShares(material.inci);
  if (!shares.ok)
    return wrong(`INCI of ${material.name} in Materials ${shares.failure.sentence}. Mend it.`);
  const [first] = shares.value;
  if (first === undefined)
    return notYet(`Fill in INCI for ${material.name} in Materials: the label needs its name.`);
  if (shares.value.length === 1 && first.percent === undefined)
    return answer({ parts: [{ name: first.name, percent: hundred }], namedPercent: hundred });
  const bare = shares.value.filter(({ percent }) => percent === undefined);
  if (bare.length > 0) {
    return notYet(
      `INCI of ${material.name} in Materials gives no percent for ${bare.map(({ name }) => name).join(', ')}: without it the label's order is not known. Type it like Aqua 40; Glycerin 30.`,
    );
  }
  const parts = shares.value.flatMap(({ name, percent }) =>
    percent === undefined || percent.isZero() ? [] : [{ name, percent }],
  );
  if (parts.length === 0)
    return notYet(`INCI of ${material.name} in Materials names nothing above 0 %. Mend it.`);
  const namedPercent = sum(parts.map(({ percent }) => percent));
  if (namedPercent.gt(hundred)) {
    return wrong(
      `INCI of ${material.name} in Materials adds up to ${namedPercent.toString()} %, more than the whole material. Mend its percents.`,
    );
  }
  return answer({ parts, namedPercent });
}

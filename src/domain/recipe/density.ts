import type { Soap } from '../book/book.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { bridgeOf } from '../measure/convert.ts';

/** Density of a soap in g/ml: its recipe's grams over the millilitres of its ingredients, taken to mix without shrinking. */
export const soapDensity = oncePer((soap: Soap): Result<Exact> => {
  let ml = zero;
  for (const { ingredient, measure, g } of soap.lines) {
    if (ingredient.kind === 'soap') {
      const density = soapDensity(ingredient.soap);
      if (!density.ok) return density;
      ml = ml.plus(g.div(density.value));
      continue;
    }
    const { material } = ingredient;
    const bridge = bridgeOf(material, measure === 'drops');
    if (bridge === undefined) {
      return wrong(
        `Fill in Density g/ml for ${material.name} in Materials: ${soap.name} is measured in ml.`,
      );
    }
    ml = ml.plus(g.div(bridge.densityGPerMl));
  }
  return answer(soap.recipeG.div(ml));
});

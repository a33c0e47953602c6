import type { Book, Design, Material } from '../book/book.ts';
import { Exact, zero } from '../kernel/exact.ts';
import { allergenList } from './allergens.ts';
import { type CheckLine, unknownLine } from './check-line.ts';
import type { Composition } from './composition.ts';
import { findAllergen } from './find-allergen.ts';
import { inciOf } from './inci.ts';
import { labelNames } from './ingredients.ts';
import { allergensOf, allergenThreshold } from './named-allergens.ts';

/** Skin stay, the allergens that the label names, and whatever leaves their count in doubt. */
export function allergenChecks(book: Book, design: Design, composition: Composition): CheckLine[] {
  const materials = composition.materials.map(({ material }) => material);
  const doubts = materials.flatMap((material) => [
    ...allergenDoubts(material),
    ...listedIngredients(material),
  ]);
  return [skinStayLine(book), ...namedLine(book, design, doubts.length > 0), ...doubts];
}

function skinStayLine(book: Book): CheckLine {
  const { skinStay, skinStaySet } = book.settings;
  return {
    check: 'Skin stay',
    value: skinStay,
    limit: `allergens named above ${allergenThreshold(skinStay).toString()} %`,
    result: skinStaySet ? 'ok' : 'unknown',
    source: skinStaySet
      ? `As set in Settings; ${allergenList.regulation}`
      : 'The default, since Settings does not say: set Skin stay to rinse-off or leave-on',
  };
}

function namedLine(book: Book, design: Design, isDoubtful: boolean): CheckLine[] {
  const names = labelNames(book, design);
  if (!names.ok) return [unknownLine('Allergens to name', '', names.failure.sentence)];
  const named = names.value.filter(({ allergen }) => allergen).map(({ name }) => name);
  return [
    {
      check: `Allergens named on the label${named.length === 0 ? '' : `: ${named.join(', ')}`}`,
      value: new Exact(named.length),
      limit: `above ${allergenThreshold(book.settings.skinStay).toString()} %`,
      result: isDoubtful ? 'unknown' : 'ok',
      source: `${allergenList.regulation} (list of ${allergenList.published})`,
    },
  ];
}

/** Why the allergens of one material may not be all, or not be rightly named. */
function allergenDoubts(material: Material): CheckLine[] {
  const check = `Allergens: ${material.name}`;
  if (material.allergens.trim() === '') {
    return material.kind === 'fragrance'
      ? [
          unknownLine(
            check,
            'blank',
            'Fill in Allergens in Materials from the supplier\'s allergen declaration, or type "none"',
          ),
        ]
      : [];
  }
  const entries = allergensOf(material);
  if (!entries.ok) return [unknownLine(check, material.allergens, entries.failure.sentence)];
  return entries.value.flatMap(({ name, listed, percent }) => [
    ...(percent === undefined
      ? [
          unknownLine(
            `${check}, ${name}`,
            'no percent',
            'Named on the label since its share is not known: add its percent',
          ),
        ]
      : []),
    ...(listed === undefined
      ? [
          unknownLine(
            `${check}, ${name}`,
            'not on the list',
            `Named as typed where above the threshold; check its spelling against ${allergenList.regulation}`,
          ),
        ]
      : []),
    ...(listed?.prohibited === undefined || percent?.isZero() === true
      ? []
      : [prohibitedLine(check, name, listed.prohibited)]),
  ]);
}

const prohibitedLine = (check: string, name: string, rule: string): CheckLine => ({
  check: `${check}, ${name}`,
  value: 'present',
  limit: zero,
  result: 'over',
  source: rule,
});

/** Ingredients that are allergens of the list themselves: a plant's oil may go by the list's own name. */
function listedIngredients(material: Material): CheckLine[] {
  const inci = inciOf(material);
  if (!inci.ok) return [];
  return inci.value.parts.flatMap(({ name }) => {
    const listed = findAllergen(name);
    const check = `Allergens: ${material.name}, ${name}`;
    if (listed === undefined) return [];
    if (listed.prohibited !== undefined) return [prohibitedLine(check, name, listed.prohibited)];
    return listed.name.toLowerCase() === name.toLowerCase()
      ? []
      : [
          unknownLine(
            check,
            `listed as ${listed.name}`,
            `${allergenList.regulation} names it so: ask which name your label needs`,
          ),
        ];
  });
}

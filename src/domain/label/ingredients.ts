import type { Book, Design, Material } from '../book/book.ts';
import { type Exact, hundred, one, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { andThen, answer, notYet, type Result, wrong } from '../kernel/result.ts';
import { type Composition, compositionOf, percentOf } from './composition.ts';
import { inciOf } from './inci.ts';
import { allergensOf, allergenThreshold } from './named-allergens.ts';

/** One name on the label, in the order it stands there. */
export interface LabelName {
  readonly name: string;
  /** Percent of the bar by weight, as far as it is known. */
  readonly percent: Exact;
  /** An Allergens cell names it without a percent, so there may be more of it. */
  readonly isShareUnknown: boolean;
  readonly group: 'over 1 %' | 'up to 1 %' | 'colour additive';
  /** Named only, or also, because it is an allergen above the threshold. */
  readonly allergen: boolean;
}

/**
 * The names of a label in order: over 1 % by descending weight, then those at or under 1 % (any
 * order is allowed; ours descends, then by name), colour additives last, whatever they weigh:
 * 21 CFR 701.3(f)(1)–(3), where exactly 1 % is free ("not exceeding 1 percent"); Reg. (EC)
 * 1223/2009 Art. 19(1)(g) orders exactly 1 % as well, which descending order keeps. Allergens above
 * the threshold are named at their own weight; one whose share is not known is named all the same,
 * and so is one that is not on the dated list, since naming too much harms nobody.
 */
export function labelNames(book: Book, design: Design): Result<readonly LabelName[]> {
  return andThen(compositionOf(book, design), (composition) =>
    andThen(checkInci(composition), () => nameAll(book, composition)),
  );
}

/** The label's ingredients as one line of text. `#N/A` names the materials that lack an INCI. */
export function ingredientsText(book: Book, design: Design): Result<string> {
  return andThen(labelNames(book, design), (names) =>
    answer(names.map(({ name }) => name).join(', ')),
  );
}

function checkInci({ materials, unweighed }: Composition): Result<true> {
  const [countedByPiece] = unweighed;
  if (countedByPiece !== undefined) {
    return notYet(
      `${countedByPiece.name} is counted by the piece, so its weight in the bar is not known. Stock it in g or ml in Materials, or make it a pack line in Layers.`,
    );
  }
  if (materials.length === 0)
    return wrong('Nothing in Layers but packaging: there is nothing to name.');
  const missing = materials
    .map(({ material }) => material)
    .filter(({ inci }) => inci.trim() === '')
    .map(({ name }) => name);
  return missing.length === 0
    ? answer(true)
    : notYet(
        `Fill in INCI in Materials for ${missing.join(', ')}: the label needs the names, as the supplier's document gives them.`,
      );
}

/** What is known of one name while the materials are gone through. */
interface Found {
  spelling: string;
  percent: Exact;
  /** Stands in some material's INCI. */
  isIngredient: boolean;
  isAllergen: boolean;
  /** Stands in an Allergens cell without a percent. */
  isShareUnknown: boolean;
}

function nameAll(book: Book, { materials, totalG }: Composition): Result<readonly LabelName[]> {
  const found = new Map<string, Found>();
  for (const { material, g } of materials) {
    const parts = partsOf(material);
    if (!parts.ok) return parts;
    for (const part of parts.value) addPart(found, part, percentOf(g, totalG));
  }
  const threshold = allergenThreshold(book.settings.skinStay);
  const named = [...found.values()].filter(
    (name) => name.isIngredient || isNamedAllergen(name, threshold),
  );
  return answer(named.map((name) => labelName(name, threshold)).sort(labelOrder));
}

interface Part {
  readonly name: string;
  readonly percent: Exact | undefined;
  readonly isIngredient: boolean;
  readonly isAllergen: boolean;
}

/** INCI parts and allergens of one material, a name once: both cells may state the same substance. */
function partsOf(material: Material): Result<readonly Part[]> {
  return andThen(inciOf(material), (inci) =>
    andThen(allergensOf(material), (allergens) => {
      const parts = new Map<string, Part>();
      const add = (part: Part): void => {
        const before = parts.get(nameKey(part.name));
        parts.set(nameKey(part.name), {
          name: before?.name ?? part.name,
          percent: larger(before?.percent, part.percent),
          isIngredient: part.isIngredient || (before?.isIngredient ?? false),
          isAllergen: part.isAllergen || (before?.isAllergen ?? false),
        });
      };
      mergeParts(inci.parts).forEach((part) => {
        add({ ...part, isIngredient: true, isAllergen: false });
      });
      mergeParts(allergens).forEach((part) => {
        add({ ...part, isIngredient: false, isAllergen: true });
      });
      return answer([...parts.values()]);
    }),
  );
}

/** Adds up a name that stands twice in one cell; an unknown share beside a known one stays unknown. */
function mergeParts(
  parts: readonly { readonly name: string; readonly percent: Exact | undefined }[],
): { name: string; percent: Exact | undefined }[] {
  const merged = new Map<string, { name: string; percent: Exact | undefined }>();
  for (const { name, percent } of parts) {
    const before = merged.get(nameKey(name));
    if (before === undefined) merged.set(nameKey(name), { name, percent });
    else
      before.percent =
        before.percent === undefined || percent === undefined
          ? undefined
          : before.percent.plus(percent);
  }
  return [...merged.values()];
}

const larger = (a: Exact | undefined, b: Exact | undefined): Exact | undefined =>
  a === undefined || b?.gt(a) === true ? b : a;

function addPart(found: Map<string, Found>, part: Part, materialPercent: Exact): void {
  const key = nameKey(part.name);
  const percent = (part.percent ?? zero).times(materialPercent).div(hundred);
  const before = found.get(key);
  found.set(key, {
    // One spelling of several, whatever the order of rows.
    spelling: before !== undefined && before.spelling < part.name ? before.spelling : part.name,
    percent: percent.plus(before?.percent ?? zero),
    isIngredient: part.isIngredient || (before?.isIngredient ?? false),
    isAllergen: part.isAllergen || (before?.isAllergen ?? false),
    isShareUnknown: part.percent === undefined || (before?.isShareUnknown ?? false),
  });
}

const isNamedAllergen = (name: Found, threshold: Exact): boolean =>
  name.isAllergen && (name.isShareUnknown || name.percent.gt(threshold));

function labelName(name: Found, threshold: Exact): LabelName {
  return {
    name: name.spelling,
    percent: name.percent,
    isShareUnknown: name.isShareUnknown,
    group: isColourAdditive(name.spelling)
      ? 'colour additive'
      : name.percent.gt(one)
        ? 'over 1 %'
        : 'up to 1 %',
    allergen: isNamedAllergen(name, threshold),
  };
}

/** By the contract a name that begins with CI and its number: CI 77891, not Citral. */
function isColourAdditive(name: string): boolean {
  return /^CI[\s-]?\d/iu.test(name);
}

const groups: readonly LabelName['group'][] = ['over 1 %', 'up to 1 %', 'colour additive'];

function labelOrder(a: LabelName, b: LabelName): number {
  return (
    groups.indexOf(a.group) - groups.indexOf(b.group) ||
    b.percent.comparedTo(a.percent) ||
    compareNames(a.name, b.name)
  );
}

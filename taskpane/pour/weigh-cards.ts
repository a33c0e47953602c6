import { itemOfLeftover, spareName } from '../../src/domain/book/find.ts';
import { count } from '../../src/domain/kernel/count.ts';
import type { Exact } from '../../src/domain/kernel/exact.ts';
import { ADDED, lineKey } from '../../src/domain/ledger/pour.ts';
import { type BenchMeasure, benchUnitOf } from '../../src/domain/measure/units.ts';
import {
  handAmount,
  needsFinerScale,
  onBench,
  tooLittle,
} from '../../src/domain/recipe/hand-amount.ts';
import type { MeltPlan } from '../../src/domain/recipe/melt-plan.ts';
import type { Melt } from '../../src/domain/recipe/melt.ts';
import { amount, ledgerAmount } from '../format.ts';

/** One thing to weigh, count or lay, with a tick before it. */
export interface WeighLine {
  readonly key: string;
  readonly name: string;
  /** What to mind with it, in a word or two. */
  readonly hint: string;
  readonly amount: Exact;
  readonly unit: BenchMeasure;
  /** Whether another amount can be reported; spare pieces are laid by the piece and only ticked. */
  readonly canDiffer: boolean;
}

/** What stands together on the bench: one colour, or what goes into and onto the bars. */
export interface WeighCard {
  readonly title: string;
  /** Undefined on the last card, of which nothing is melted. */
  readonly meltG: Exact | undefined;
  /** What the melt is for, a sentence each. */
  readonly uses: readonly string[];
  readonly lines: readonly WeighLine[];
}

/** The plan as cards in pouring order; a colour stands before every blend made from it. */
export function cardsOf(plan: MeltPlan): WeighCard[] {
  const cards = plan.melts.map((melt) => ({
    title: melt.soap.name,
    meltG: melt.meltG,
    uses: usesOf(melt, plan.scaleStepG),
    lines: [...remelt(melt), ...ingredients(melt, plan.scaleStepG)],
  }));
  const last = [...plan.melts.flatMap(sparesToLay), ...addedLines(plan)];
  return last.length === 0
    ? cards
    : [...cards, { title: 'Into and onto the bars', meltG: undefined, uses: [], lines: last }];
}

/** Lines whose amount the maker may report as different. */
export function linesToChange(cards: readonly WeighCard[]): WeighLine[] {
  return cards.flatMap(({ lines }) => lines).filter(({ canDiffer }) => canDiffer);
}

/** A line's amount in words, all of what recording it will take. */
export function amountOf({ amount: wanted, unit }: Pick<WeighLine, 'amount' | 'unit'>): string {
  if (!wanted.isZero())
    return wanted.eq(1) && unit === 'drops' ? '1 drop' : ledgerAmount(wanted, unit);
  return tooLittle(unit);
}

function usesOf({ shapes, pouredG, blendedG, meltG }: Melt, scaleStepG: Exact): string[] {
  const grams = (g: Exact) => ledgerAmount(handAmount(g, 'g', scaleStepG), 'g');

  if (meltG.isZero()) return ['Nothing to melt: the spare pieces on hand are enough.'];
  return [
    ...shapes
      .filter(({ fills }) => !fills.isZero())
      .map(
        ({ mold, fills }) =>
          `${count(fills, 'fill')} of ${mold.name} (${count(fills.times(mold.cavities), 'piece')})`,
      ),
    ...(pouredG.isZero() ? [] : [`${grams(pouredG)} to pour into the bars`]),
    ...(blendedG.isZero() ? [] : [`${grams(blendedG)} kept for blends below`]),
  ];
}

function remelt({ soap, remeltG }: Melt): WeighLine[] {
  if (remeltG.isZero()) return [];
  const { name } = itemOfLeftover(soap);
  return [
    {
      key: lineKey(soap.name, name),
      name,
      hint: 'melt this first',
      amount: remeltG,
      unit: 'g',
      canDiffer: true,
    },
  ];
}

function ingredients(melt: Melt, scaleStepG: Exact): WeighLine[] {
  return melt.ingredients.map(({ line: { ingredient }, amount: wanted, measure, quantity }) => {
    const isSoap = ingredient.kind === 'soap';
    const name = isSoap ? ingredient.soap.name : ingredient.material.name;
    const isManyDrops = measure === 'drops' && wanted.gt(MANY_DROPS);
    const inMl = isManyDrops && !isSoap && benchUnitOf(ingredient.material.unit) === 'ml';
    return {
      key: lineKey(melt.soap.name, name),
      name,
      hint: isSoap
        ? 'from its melt above'
        : inMl
          ? `about ${amount(onBench(quantity, ingredient.material.unit), 'ml').text}`
          : finerHint(wanted, measure, scaleStepG),
      amount: wanted,
      unit: measure,
      canDiffer: true,
    };
  });
}

const finerHint = (wanted: Exact, unit: BenchMeasure, scaleStepG: Exact): string =>
  needsFinerScale(wanted, unit, scaleStepG) ? 'on a finer scale' : '';

/** Past this many nobody counts without losing count. */
const MANY_DROPS = 20;

function sparesToLay({ soap, shapes }: Melt): WeighLine[] {
  return shapes
    .filter(({ piecesFromSpares }) => !piecesFromSpares.isZero())
    .map(({ mold, piecesFromSpares }) => ({
      key: `spare > ${spareName(soap, mold)}`,
      name: spareName(soap, mold),
      hint: 'spare, from stock',
      amount: piecesFromSpares,
      unit: 'each',
      canDiffer: false,
    }));
}

function addedLines(plan: MeltPlan): WeighLine[] {
  return plan.added.map(({ material, quantity }) => {
    const unit = benchUnitOf(material.unit);
    const measured = onBench(quantity, material.unit);
    return {
      key: lineKey(ADDED, material.name),
      name: material.name,
      hint: [partWord(plan, material.name), finerHint(measured, unit, plan.scaleStepG)]
        .filter((words) => words !== '')
        .join(', '),
      amount: measured,
      unit,
      canDiffer: true,
    };
  });
}

const partWords = { scent: 'scent', paint: 'paint', pack: 'packaging' } as const;

function partWord(plan: MeltPlan, name: string): string {
  const layer = plan.design.layers.find(
    (known) => 'material' in known && known.material.name === name,
  );
  return layer !== undefined && 'material' in layer ? partWords[layer.part] : '';
}

import { labourMinutes } from '../../src/domain/recipe/labour.ts';
import type { Book, Design, Soap } from '../../src/domain/book/book.ts';
import { findDesign, leftoverName, spareName } from '../../src/domain/book/find.ts';
import { type Day, readDay } from '../../src/domain/kernel/day.ts';
import { type Exact, exact, sum } from '../../src/domain/kernel/exact.ts';
import { all, andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { planPour } from '../../src/domain/ledger/plan-pour.ts';
import type { Pour } from '../../src/domain/ledger/pour.ts';
import type { Measure } from '../../src/domain/measure/units.ts';
import { leftoversOnHand } from '../../src/domain/recipe/leftovers-on-hand.ts';
import type { MeltPlan } from '../../src/domain/recipe/melt-plan.ts';
import { pouringOrder } from '../../src/domain/recipe/pouring-order.ts';
import { keptAnswer } from '../task/kept-answer.ts';
import { type Typed, typedAt } from '../task/typed.ts';
import type { Draft } from './draft.ts';
import { day } from '../format.ts';
import { minutes as inMinutes, quantityIn, readTyped, readWhole } from '../typed-number.ts';
import { cardsOf, linesToChange } from './weigh-cards.ts';

/** What the draft means against the workbook as it is now. */
export interface PlannedPour {
  readonly design: Design;
  readonly bars: number;
  readonly poured: Day;
  readonly useLeftovers: boolean;
  readonly plan: MeltPlan;
}

/** Plans the draft's pour, or says which choice is missing or can't be. Planned once for what it hangs on. */
export const planOfDraft = (
  book: Book,
  { design, bars, poured, useLeftovers }: Draft,
  today: Day,
): Result<PlannedPour> => planFor(book, design, bars, poured, useLeftovers, today);

// A page asks several times a drawing, and a note that is typed is no other plan.
const planFor = keptAnswer(
  (
    book: Book,
    name: string,
    typedBars: string,
    pouredOn: string,
    mayUse: boolean | undefined,
    today: Day,
  ): Result<PlannedPour> => {
    if (name === '') return wrong('Choose a design.');
    const found = findDesign(book, name);
    if (!found.ok) {
      return wrong(`"${name}" is no longer in Designs. Choose another, or put it back.`);
    }
    const design = found.value;
    const poured = readDay(pouredOn);
    if (poured === undefined) return wrong('Date poured is blank. Choose the day.');
    if (poured > today) {
      return wrong(
        `Date poured is ${day(poured)}, which is still to come. Choose today or before.`,
      );
    }
    if (typedBars.trim() === '') {
      return wrong('Good bars wanted is blank. Type how many you want.');
    }
    const useLeftovers = mayUse ?? hasLeftovers(book, design, today);
    return andThen(readWhole(typedBars, 'Good bars wanted', 1), (bars) =>
      andThen(planPour(book, { design, bars, poured, useLeftovers }, today), (plan) =>
        answer({ design, bars, poured, useLeftovers, plan }),
      ),
    );
  },
);

/** Whether leftover soap or spare pieces that the design can use are on hand. */
export function hasLeftovers(book: Book, design: Design, asOf: Day): boolean {
  const onHand = leftoversOnHand(book, asOf, true);
  const isThere = (name: string): boolean => onHand(name).gt(0);
  const molds = (soap: Soap) =>
    design.layers.flatMap((layer) =>
      'mold' in layer && layer.soap.name === soap.name ? [layer.mold] : [],
    );
  return pouringOrder(design.layers).some(
    (soap) =>
      isThere(leftoverName(soap)) || molds(soap).some((mold) => isThere(spareName(soap, mold))),
  );
}

/** Minutes the design itself says for the bars to start. */
export const plannedMinutes = ({ design, plan }: PlannedPour): Exact =>
  labourMinutes(design, plan.barsToStart);

/** The pour as the maker reports it; the plan stands wherever nothing was typed. */
export function pourOfDraft(draft: Draft, planned: PlannedPour, by: string): Result<Pour> {
  const { bars, poured, plan } = planned;
  const lines = linesToChange(cardsOf(plan));
  const good = draft.good === '' ? answer(bars) : readWhole(draft.good, 'Good bars', 0);
  const seconds = draft.seconds === '' ? answer(0) : readWhole(draft.seconds, 'Seconds', 0);
  const lost = readLost(draft);
  const minutes =
    draft.minutes === ''
      ? answer(undefined)
      : readTyped(draft.minutes, 'Minutes it took', inMinutes);
  const weighed = readAll(draft.weighed, lines);
  const sparePieces = readAll(draft.spares, ofUnit('each', sparesOf(plan)));
  const leftoverG = readAll(draft.leftoverG, ofUnit('g', leftoversOf(plan)));
  if (!good.ok) return good;
  if (!seconds.ok) return seconds;
  if (!lost.ok) return lost;
  if (!minutes.ok) return minutes;
  if (!weighed.ok) return weighed;
  if (!sparePieces.ok) return sparePieces;
  if (!leftoverG.ok) return leftoverG;
  return answer({
    batch: draft.batch,
    poured,
    plan,
    good: good.value,
    seconds: seconds.value,
    lost: lost.value,
    minutes: minutes.value?.toNumber(),
    weighed: weighed.value,
    sparePieces: sparePieces.value,
    leftoverG: leftoverG.value,
    countIsOff: new Set(draft.countIsOff),
    by,
    note: draft.note.trim(),
  });
}

/**
 * The pour just as planned, to see before anything melts what stock is short of. All bars started are taken
 * to come out, so that there is packaging for each that may.
 */
export function pourAsPlanned(batch: string, planned: PlannedPour): Pour {
  const { poured, plan } = planned;
  return {
    batch,
    poured,
    plan,
    good: plan.barsToStart.toNumber(),
    seconds: 0,
    lost: 0,
    minutes: undefined,
    weighed: new Map(),
    sparePieces: new Map(),
    leftoverG: new Map(),
    countIsOff: new Set(),
    by: '',
    note: '',
  };
}

/** Left blank it tells of no bar: what is missing then is asked for, never taken for lost. */
const readLost = ({ lost }: Draft): Result<number> =>
  lost.trim() === '' ? answer(0) : readWhole(lost, 'Lost', 0);

/** Bars started of which the figures as typed say nothing; undefined where a figure is none. */
export function untoldBars(draft: Draft, { bars, plan }: PlannedPour): number | undefined {
  const typed = [
    draft.good === '' ? answer(bars) : readWhole(draft.good, '', 0),
    draft.seconds === '' ? answer(0) : readWhole(draft.seconds, '', 0),
    readLost(draft),
  ];
  const told = all(typed);
  return told.ok ? plan.barsToStart.minus(sum(told.value.map(exact))).toNumber() : undefined;
}

/** An item that the pour leaves, with what the plan expects of it. */
export interface Expected {
  readonly name: string;
  readonly planned: Exact;
}

/** Spare pieces to count afterwards: one of each kind shaped. */
export function sparesOf(plan: MeltPlan): Expected[] {
  return plan.melts.flatMap(({ soap, shapes }) =>
    shapes
      .filter(({ fills }) => !fills.isZero())
      .map(({ mold, sparePieces }) => ({ name: spareName(soap, mold), planned: sparePieces })),
  );
}

/** Leftover soap to weigh afterwards: one of each soap melted. */
export function leftoversOf(plan: MeltPlan): Expected[] {
  return plan.melts
    .filter(({ meltG }) => !meltG.isZero())
    .map(({ soap, leftoverG }) => ({ name: leftoverName(soap), planned: leftoverG }));
}

/** A figure that may be typed: under which key, of what, and in which measure. */
interface Figure {
  readonly key: string;
  readonly name: string;
  readonly unit: Measure;
}

/** Only what the present plan has: a figure typed for a line that is gone waits until it is back. */
function readAll(typed: Typed, figures: readonly Figure[]): Result<Map<string, Exact>> {
  const read = figures.flatMap(({ key, name, unit }) => {
    const figure = typedAt(typed, key);
    if (figure === undefined || figure.trim() === '') return [];
    const value = readTyped(figure, name, quantityIn(unit));
    return [andThen(value, (told) => answer<[string, Exact]>([key, exact(told.toNumber())]))];
  });
  return andThen(all(read), (pairs) => answer(new Map(pairs)));
}

const ofUnit = (unit: Measure, expected: readonly Expected[]): Figure[] =>
  expected.map(({ name }) => ({ key: name, name, unit }));

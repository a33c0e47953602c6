import { labourMinutes } from '../recipe/labour.ts';
import type { Book, Design, Mold } from '../book/book.ts';
import type { Settings } from '../book/settings.ts';
import { divideUp, type Exact, exact, toCell } from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';
import { wholePieces } from '../recipe/melt.ts';

/** A day and a night: a mold set overnight is empty next morning. */
const DAY_MINUTES = 24 * 60;

/** What one day allows: minutes of work, and fills of each mold. Infinity where the book doesn't say. */
export interface Capacity {
  readonly minutes: number;
  readonly fillsOf: (mold: Mold) => number;
}

/**
 * Capacity by Minutes per day and by the sections owned, each filled again once it has set, as often as
 * that goes into the day's minutes and at least once.
 */
export function capacityOf({ minutesPerDay }: Pick<Settings, 'minutesPerDay'>): Capacity {
  const clock = minutesPerDay > 0 ? minutesPerDay : DAY_MINUTES;
  return {
    minutes: minutesPerDay > 0 ? minutesPerDay : Infinity,
    fillsOf: ({ sections, setMinutes }) => {
      if (sections === undefined || setMinutes === undefined || setMinutes.isZero())
        return Infinity;
      return toCell(sections) * Math.max(1, Math.floor(clock / toCell(setMinutes)));
    },
  };
}

/** Days on which a fill keeps its section from others: one, and what setting takes beyond a day and a night. */
export const daysInMold = ({ setMinutes }: Mold): number =>
  setMinutes === undefined ? 1 : Math.max(1, Math.ceil(toCell(setMinutes) / DAY_MINUTES));

/** Days that a poured bar stays in its mold beyond the day of the pour. */
export function settingDays({ barMold }: Design, { minutes }: Capacity): number {
  const set = barMold?.setMinutes === undefined ? 0 : toCell(barMold.setMinutes);
  return set > Math.min(minutes, DAY_MINUTES) ? Math.ceil(set / DAY_MINUTES) : 0;
}

/** Whole days from the pour until bars can be sold. */
export const dryingDays = ({ handsOffHours }: Design): number =>
  Math.ceil(toCell(handsOffHours) / 24);

/** Minutes of work for a batch of so many good bars, the lost ones with them. */
export function minutesFor(design: Design, bars: number): number {
  return toCell(labourMinutes(design, started(design, bars)));
}

/** Bars to start so that so many come out good. */
export const startedBars = (design: Design, bars: number): number => toCell(started(design, bars));

/** Fills of each mold for a batch; the bar mold apart from the pieces laid in. */
export interface Fills {
  readonly pieces: ReadonlyMap<Mold, number>;
  readonly bars: ReadonlyMap<Mold, number>;
}

/** Fills for a batch of so many good bars made alone. */
export function fillsFor(design: Design, bars: number): Fills {
  const starting = started(design, bars);
  const pieces = new Map<Mold, number>();
  for (const { mold, perBar } of piecesOf(design)) {
    const fills = toCell(divideUp(perBar.times(starting), wholePieces(mold)));
    pieces.set(mold, (pieces.get(mold) ?? 0) + fills);
  }
  const { barMold } = design;
  if (barMold === undefined) return { pieces, bars: new Map() };
  return { pieces, bars: new Map([[barMold, toCell(divideUp(starting, barMold.cavities))]]) };
}

/** Pieces of one soap from one mold in each bar. */
export interface PiecesOfSoap {
  readonly soap: string;
  readonly mold: Mold;
  readonly perBar: Exact;
}

/** The tiles and embeds of a bar, each soap and mold once. */
export const piecesOf = oncePer((design: Design): readonly PiecesOfSoap[] => {
  const bySoap = new Map<string, PiecesOfSoap>();
  for (const layer of design.layers) {
    if (layer.part !== 'tiles' && layer.part !== 'embed') continue;
    const { soap, mold } = layer;
    const key = `${soap.name}\n${mold.name}`;
    const perBar = layer.perBar.plus(bySoap.get(key)?.perBar ?? 0);
    bySoap.set(key, { soap: soap.name, mold, perBar });
  }
  return [...bySoap.values()];
});

const started = ({ yieldShare }: Design, bars: number): Exact => exact(bars).div(yieldShare).ceil();

/** What had to be taken as no limit because the book doesn't say, a sentence each. */
export function unlimited(book: Book, molds: Iterable<Mold>): string[] {
  const sentences = [];
  if (book.settings.minutesPerDay === 0) {
    sentences.push(
      'Minutes per day is not set in Settings, so no day is too full. Fill it in to plan by it.',
    );
  }
  for (const { name, sections, setMinutes } of molds) {
    if (sections === undefined || setMinutes === undefined) {
      const missing = sections === undefined ? 'Sections' : 'Set minutes';
      sentences.push(`${missing} of ${name} is blank in Molds, so that mold is no limit.`);
    }
  }
  return sentences;
}

import { count } from '../kernel/count.ts';
import { Exact, sum, zero } from '../kernel/exact.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { pouredMelts, type PouredMelt } from './consumption.ts';
import type { Melting, Pour } from './pour.ts';

/** What the pour took and left, once the maker's figures make sense together; else a sentence. */
export function checkPour(pour: Pour): Result<readonly PouredMelt[]> {
  const { plan, good, seconds, lost = 0 } = pour;
  const counts = Object.entries({ 'Good bars': good, Seconds: seconds, Lost: lost });
  const notWhole = counts.find(([, count]) => !Number.isInteger(count) || count < 0);
  if (notWhole !== undefined)
    return wrong(`${notWhole[0]} is ${notWhole[1]}. Give a whole number, 0 or more.`);
  const untold = plan.barsToStart.minus(good + seconds + lost);
  const started = count(plan.barsToStart, 'bar');
  if (untold.isNegative()) {
    const told = `${good} good${lost === 0 ? ' and' : ','} ${count(seconds, 'second')}${lost === 0 ? '' : ` and ${lost} lost`}`;
    return wrong(
      `${told} are more than the ${started} started. Mend the numbers, or start more bars.`,
    );
  }
  if (pour.lost !== undefined && !untold.isZero()) {
    return wrong(
      `${started} ${plan.barsToStart.eq(1) ? 'was' : 'were'} started, and ${untold.toString()} ${untold.eq(1) ? 'is' : 'are'} not told of yet. Type ${untold.eq(1) ? 'it' : 'them'} under Good bars, Seconds or Lost.`,
    );
  }
  const { secondsShare: share } = pour;
  if (share !== undefined && (share.isNegative() || share.gt(1)))
    return wrong(
      `A second is worth ${share.times(100).toString()} % of a good bar. Give a share from 0 to 100 %.`,
    );
  return checkMelting(pour);
}

/** What some melting took and left, once its figures make sense together; else a sentence. */
export function checkMelting(pour: Melting): Result<readonly PouredMelt[]> {
  const { minutes } = pour;
  if (minutes !== undefined && !(Number.isFinite(minutes) && minutes >= 0))
    return wrong(`Minutes is ${minutes}. Give 0 or more.`);
  const figures = [...pour.weighed, ...pour.sparePieces, ...pour.leftoverG];
  const negative = figures.find(([, figure]) => figure.lt(zero) || !figure.isFinite());
  if (negative !== undefined)
    return wrong(`${negative[0]} is ${negative[1].toString()}. Give 0 or more.`);
  const melts = pouredMelts(pour);
  const gained = melts.find((melt) => outG(melt, melts).minus(inG(melt)).gt(NO_SCALE_SHOWS_G));
  if (gained !== undefined) {
    const name = gained.melt.soap.name;
    return wrong(
      `${name}: leftover, spare tiles and blends come to ${shown(outG(gained, melts))} g, more than the ${shown(inG(gained))} g that was melted. Weigh the leftover again.`,
    );
  }
  return answer(melts);
}

/** A colour that goes into blends whole comes out a little above what went in, once thirds and figures are rounded. */
const NO_SCALE_SHOWS_G = new Exact('0.01');

const shown = (g: Exact): string => g.toDecimalPlaces(1).toString();

const inG = ({ consumed }: PouredMelt): Exact => sum(consumed.map(({ g }) => g));

/** What of a melt is known not to be in the bars. */
function outG({ melt, leftoverG, sparesMade }: PouredMelt, melts: readonly PouredMelt[]): Exact {
  const sparesG = sparesMade.map(({ shape, pieces }) =>
    pieces.times(shape.mold.fillG).div(shape.mold.cavities),
  );
  const blended = melts.flatMap(({ consumed }) =>
    consumed.filter(({ soap }) => soap?.name === melt.soap.name).map(({ g }) => g),
  );
  return sum([leftoverG, ...sparesG, ...blended]);
}

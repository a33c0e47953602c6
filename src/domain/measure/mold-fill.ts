import { type Exact, exact, sum } from '../kernel/exact.ts';
import { isNumberAsText, NUMBER_AS_TEXT, quoted } from '../kernel/names.ts';
import { answer, notYet, type Result, wrong } from '../kernel/result.ts';

/** What one fill of a mold holds, by weighing some. */
export interface MoldFill {
  /** The mean, in g of soap. */
  readonly fillG: Exact;
  /** How far single fills lie apart: the sample standard deviation; undefined of one weighing. */
  readonly sdG: Exact | undefined;
  /** How far the mean may be off: the standard uncertainty s/√n of JCGM 100:2008 (GUM), 4.2.3. */
  readonly uncertaintyG: Exact | undefined;
  readonly trials: number;
}

export interface Weighings {
  /** In g, a fill each with what it was weighed in; blank cells, and a 0, are none. */
  readonly weights: readonly (string | number | boolean)[];
  /** What the empty mold or cup weighs, in g. */
  readonly emptyG: Exact;
  /** In g/ml, of the water or soap that was weighed, and of the soap that will be poured. */
  readonly weighedDensity: Exact;
  readonly soapDensity: Exact;
}

/** The mean of some weighed fills as g of soap, with its spread. Fails where a weight is none, or not above the empty mold's. */
export function moldFill({
  weights,
  emptyG,
  weighedDensity,
  soapDensity,
}: Weighings): Result<MoldFill> {
  if (emptyG.isNegative()) return wrong(`empty g is ${emptyG.toString()}. Give 0 or more.`);
  const densities = {
    'density of what was weighed': weighedDensity,
    'density of soap': soapDensity,
  };
  for (const [what, density] of Object.entries(densities))
    if (!density.gt(0)) return wrong(`${what} is ${density.toString()}. Give g per ml, above 0.`);
  const fills: Exact[] = [];
  for (const [at, cell] of weights.entries()) {
    if (isBlank(cell)) continue;
    if (typeof cell !== 'number') {
      const says = isNumberAsText(cell)
        ? NUMBER_AS_TEXT
        : 'which is not a number. Give the weights alone';
      return wrong(`Weight ${at + 1} is ${quoted(cell)}, ${says}.`);
    }
    const net = exact(cell).minus(emptyG);
    if (!net.gt(0)) {
      return wrong(
        `Weight ${at + 1} is ${cell}, no more than the ${emptyG.toString()} g of the empty mold. Weigh it full.`,
      );
    }
    fills.push(net.times(soapDensity).div(weighedDensity));
  }
  return fills.length === 0
    ? notYet('weights is blank. Give the weight of each fill, a cell for each.')
    : answer(spreadOf(fills));
}

/** A blank cell reaches a function as "" or as 0, and no fill weighs 0. */
const isBlank = (cell: string | number | boolean): boolean =>
  cell === 0 || (typeof cell === 'string' && cell.trim() === '');

function spreadOf(fills: readonly Exact[]): MoldFill {
  const trials = fills.length;
  const fillG = sum(fills).div(trials);
  if (trials === 1) return { fillG, sdG: undefined, uncertaintyG: undefined, trials };
  const squares = sum(fills.map((fill) => fill.minus(fillG).pow(2)));
  const sdG = squares.div(trials - 1).sqrt();
  return { fillG, sdG, uncertaintyG: sdG.div(exact(trials).sqrt()), trials };
}

import { Exact, zero } from '../kernel/exact.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';

/** The same net weight in both systems, each rounded down. */
export interface NetWeight {
  /** "88 g" */
  readonly metric: string;
  /** "3.1 oz", or "24 oz (1 lb 8 oz)". */
  readonly avoirdupois: string;
  /** "Net Wt 3.1 oz (88 g)" */
  readonly statement: string;
}

/** 1 oz, legally 1/16 of 453.59237 g (NIST Handbook 44, appendix C; UCUM 2.2). */
const OUNCE_G = new Exact('28.349523125');
const POUND_OZ = 16;
/** Below this many grams a whole gram is too coarse. */
const FINE_BELOW_G = 10;

/**
 * States a net weight in g and oz without ever overstating: both are rounded down (the uniform
 * labelling rules forbid a conversion that overstates: REFERENCES G10, G11), ounces to two
 * decimals (21 CFR 701.13(d)), grams to whole ones from 10 g. From one pound to four, ounces stand
 * first with pounds in brackets; from four pounds on, pounds stand first (21 CFR 701.13(j), the
 * latter from memory). Fails unless the weight comes to at least 0.01 oz.
 */
export function netWeight(g: Exact): Result<NetWeight> {
  const ounces = down(g.div(OUNCE_G), 2);
  if (!ounces.gt(0))
    return wrong(`A net weight of ${g.toString()} g can't be stated. Give 1 g or more.`);
  const metric = `${down(g, g.lt(FINE_BELOW_G) ? 1 : 0).toString()} g`;
  const avoirdupois = inPounds(ounces);
  return answer({ metric, avoirdupois, statement: `Net Wt ${avoirdupois} (${metric})` });
}

const down = (value: Exact, decimals: number): Exact =>
  value.toDecimalPlaces(decimals, Exact.ROUND_DOWN);

function inPounds(ounces: Exact): string {
  const total = `${ounces.toString()} oz`;
  if (ounces.lt(POUND_OZ)) return total;
  const pounds = ounces.div(POUND_OZ).floor();
  const rest = ounces.minus(pounds.times(POUND_OZ));
  const mixed = `${pounds.toString()} lb${rest.eq(zero) ? '' : ` ${rest.toString()} oz`}`;
  return pounds.lt(4) ? `${total} (${mixed})` : mixed;
}

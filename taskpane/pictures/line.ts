import { nothing, svg, type SVGTemplateResult } from 'lit';
import { WIDTH } from './picture.ts';
import { niceTicks, tenth } from './scale.ts';

/** A line over a plane that begins at 0 upwards. */
export interface LinePlot {
  /** In order from left to right; at least one. */
  readonly points: readonly (readonly [number, number])[];
  /** Steps from one point to the next, since between them there is nothing. */
  readonly isStepped: boolean;
  readonly across: string;
  /** Where to write a number below the plane. */
  readonly acrossTicks: readonly number[];
  readonly acrossText: (x: number) => string;
  readonly upText: (y: number) => string;
  /** A point to ring, with words beside it. */
  readonly mark?: { readonly at: readonly [number, number]; readonly text: string };
}

const LEFT = 50;
const RIGHT = 8;
const TOP = 10;
const FLOOR = 150;
const HEIGHT = 190;

/** A line with its axes; the highest tick bounds it. */
export function linePlot(plot: LinePlot): {
  readonly drawing: SVGTemplateResult;
  readonly height: number;
} {
  const { points, mark } = plot;
  const all = mark === undefined ? points : [...points, mark.at];
  const ticks = niceTicks(Math.max(...all.map(([, y]) => y)), 4);
  const top = ticks.at(-1) ?? 1;
  const first = points[0]?.[0] ?? 0;
  const last = points.at(-1)?.[0] ?? first;
  const width = WIDTH - LEFT - RIGHT;
  const x = (value: number): number =>
    tenth(LEFT + (last === first ? 0.5 : (value - first) / (last - first)) * width);
  const y = (value: number): number => tenth(FLOOR - (value / top) * (FLOOR - TOP));
  const path = points
    .map(([px, py], index) => {
      if (index === 0) return `M${String(x(px))} ${String(y(py))}`;
      return plot.isStepped
        ? `H${String(x(px))}V${String(y(py))}`
        : `L${String(x(px))} ${String(y(py))}`;
    })
    .join('');
  const drawing = svg`${ticks.map(
    (tick) =>
      svg`<line class=${tick === 0 ? 'axis' : 'grid'} x1=${LEFT} x2=${WIDTH - RIGHT} y1=${y(tick)} y2=${y(tick)}></line>
        <text class="fine end" x=${LEFT - 6} y=${y(tick) + 4}>${plot.upText(tick)}</text>`,
  )}
  ${plot.acrossTicks.map(
    (tick) =>
      svg`<text class="fine ${tick === last ? 'end' : 'middle'}" x=${tick === last ? WIDTH : x(tick)} y=${FLOOR + 16}>${plot.acrossText(tick)}</text>`,
  )}
  <text class="fine middle" x=${LEFT + width / 2} y=${FLOOR + 34}>${plot.across}</text>
  <path class="line" d=${path}></path>
  ${mark === undefined ? nothing : markAt(x(mark.at[0]), y(mark.at[1]), mark.text)}`;
  return { drawing, height: HEIGHT };
}

/** Words stand on the side that has room, above the line. */
function markAt(x: number, y: number, text: string): SVGTemplateResult {
  const isRight = x > WIDTH / 2;
  return svg`<circle class="mark" cx=${x} cy=${y} r="4.5"></circle>
    <text class=${isRight ? 'end' : ''} x=${isRight ? x - 6 : x + 8} y=${y - 9}>${text}</text>`;
}

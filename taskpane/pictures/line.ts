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
  /** A broken line at one height, named below the plane. */
  readonly level?: { readonly at: number; readonly text: string };
  /** Spans to bar right below the plane, named below it. */
  readonly spans?: {
    readonly of: readonly (readonly [from: number, to: number])[];
    readonly text: string;
  };
}

/** Where a value of the plot is on the paper. */
interface Paper {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

const LEFT = 50;
const RIGHT = 8;
const TOP = 10;
const FLOOR = 150;
const HEIGHT = 190;
const PLANE = WIDTH - LEFT - RIGHT;
/** A line of words below the plane. */
const LEGEND = 18;
const SPAN = 6;
/** A line of more points is drawn thinner, or its steps would run together. */
const MOST_BOLD = 100;
/** So narrow a span could still be seen. */
const LEAST_SPAN = 2;

/** A line with its axes; the highest tick bounds it. */
export function linePlot(plot: LinePlot): {
  readonly drawing: SVGTemplateResult;
  readonly height: number;
} {
  const { points, mark, level } = plot;
  const heights = [...points.map(([, y]) => y), mark?.at[1] ?? 0, level?.at ?? 0];
  const ticks = niceTicks(Math.max(...heights), 4);
  const top = ticks.at(-1) ?? 1;
  const first = points[0]?.[0] ?? 0;
  const last = points.at(-1)?.[0] ?? first;
  const paper: Paper = {
    x: (value) => tenth(LEFT + (last === first ? 0.5 : (value - first) / (last - first)) * PLANE),
    y: (value) => tenth(FLOOR - (value / top) * (FLOOR - TOP)),
  };
  const legend = legendOf(plot);
  const drawing = svg`${axes(plot, ticks, last, paper)}
  <path class=${points.length > MOST_BOLD ? 'line thin' : 'line'} d=${pathOf(plot, paper)}></path>
  ${plot.spans?.of.map((span) => spanUnder(span, paper))}
  ${level === undefined ? nothing : levelAt(paper.y(level.at))}
  ${mark === undefined ? nothing : markAt(paper.x(mark.at[0]), paper.y(mark.at[1]), mark.text)}
  ${legend}`;
  return { drawing, height: HEIGHT + legend.length * LEGEND };
}

function axes(plot: LinePlot, ticks: readonly number[], last: number, { x, y }: Paper) {
  return svg`${ticks.map(
    (tick) =>
      svg`<line class=${tick === 0 ? 'axis' : 'grid'} x1=${LEFT} x2=${WIDTH - RIGHT} y1=${y(tick)} y2=${y(tick)}></line>
        <text class="fine end" x=${LEFT - 6} y=${y(tick) + 4}>${plot.upText(tick)}</text>`,
  )}
  ${plot.acrossTicks.map(
    (tick) =>
      svg`<text class="fine ${tick === last ? 'end' : 'middle'}" x=${tick === last ? WIDTH : x(tick)} y=${FLOOR + 16}>${plot.acrossText(tick)}</text>`,
  )}
  <text class="fine middle" x=${LEFT + PLANE / 2} y=${FLOOR + 34}>${plot.across}</text>`;
}

const pathOf = ({ points, isStepped }: LinePlot, { x, y }: Paper): string =>
  points
    .map(([px, py], index) => {
      if (index === 0) return `M${String(x(px))} ${String(y(py))}`;
      return isStepped
        ? `H${String(x(px))}V${String(y(py))}`
        : `L${String(x(px))} ${String(y(py))}`;
    })
    .join('');

const levelAt = (y: number): SVGTemplateResult =>
  svg`<line class="level" x1=${LEFT} x2=${WIDTH - RIGHT} y1=${y} y2=${y}></line>`;

const spanUnder = ([from, to]: readonly [number, number], { x }: Paper): SVGTemplateResult =>
  svg`<rect class="span" x=${x(from)} y=${FLOOR + 1} width=${Math.max(x(to) - x(from), LEAST_SPAN)} height=${SPAN}></rect>`;

/** What the broken line and the spans stand for, each beside a piece of it. */
function legendOf({ level, spans }: LinePlot): readonly SVGTemplateResult[] {
  const at = (index: number): number => HEIGHT + index * LEGEND + 8;
  const words = (index: number, text: string): SVGTemplateResult =>
    svg`<text class="fine" x=${LEFT + 30} y=${at(index)}>${text}</text>`;
  return [
    ...(level === undefined
      ? []
      : [
          (index: number) =>
            svg`<line class="level" x1=${LEFT} x2=${LEFT + 24} y1=${at(index) - 4} y2=${at(index) - 4}></line>${words(index, level.text)}`,
        ]),
    ...(spans === undefined
      ? []
      : [
          (index: number) =>
            svg`<rect class="span" x=${LEFT + 6} y=${at(index) - SPAN} width="12" height=${SPAN}></rect>${words(index, spans.text)}`,
        ]),
  ].map((draw, index) => draw(index));
}

/** Words stand on the side that has room, above the line. */
function markAt(x: number, y: number, text: string): SVGTemplateResult {
  const isRight = x > WIDTH / 2;
  return svg`<circle class="mark" cx=${x} cy=${y} r="4.5"></circle>
    <text class=${isRight ? 'end' : ''} x=${isRight ? x - 6 : x + 8} y=${y - 9}>${text}</text>`;
}

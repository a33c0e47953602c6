import { svg, type SVGTemplateResult } from 'lit';
import { WIDTH } from './picture.ts';
import { tenth } from './scale.ts';

/** One lying bar with its name and amount written over it. */
export interface LyingBar {
  readonly name: string;
  /** As it is shown. */
  readonly amount: string;
  /** 0 or more; the longest fills the width. */
  readonly length: number;
}

const ROW = 34;
/** Letters that fit beside an amount; the table has the whole name. */
const LONGEST_NAME = 28;

/** Bars one under the other: every one bears its words, so that none is told by colour. */
export function lyingBars(bars: readonly LyingBar[]): {
  readonly drawing: SVGTemplateResult;
  readonly height: number;
} {
  const longest = Math.max(...bars.map(({ length }) => length), 0);
  const drawing = svg`${bars.map(({ name, amount, length }, index) => {
    const top = index * ROW;
    const long = longest === 0 ? 0 : tenth((length / longest) * WIDTH);
    return svg`<text x="0" y=${top + 14}>${cut(name)}</text>
      <text class="end" x=${WIDTH} y=${top + 14}>${amount}</text>
      <rect class="bar" x="0" y=${top + 19} width=${long} height="9" rx="2"></rect>`;
  })}`;
  return { drawing, height: Math.max(bars.length, 1) * ROW };
}

const cut = (name: string): string =>
  name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;

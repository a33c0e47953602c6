/** A native chart on a sheet, drawn by the spreadsheet from cells. */
import type { RangeImage } from '../image.ts';

export interface NewChart {
  /** `column` stands upright, `bar` lies; both may stack. */
  readonly kind: 'column' | 'bar' | 'line' | 'scatter' | 'doughnut';
  readonly title: string;
  /** What the picture says, for a screen reader. */
  readonly description: string;
  /** The cells it covers. */
  readonly place: RangeImage;
  readonly series: readonly NewSeries[];
  readonly stacked?: boolean;
  readonly horizontalAxis?: NewAxis;
  readonly verticalAxis?: NewAxis;
  readonly legend?: 'bottom' | 'right' | 'none';
  /** For scatter: join the points by lines. */
  readonly lines?: boolean;
}

export interface NewSeries {
  readonly name: string;
  /** Category texts, or for scatter the horizontal numbers. */
  readonly categories: ChartCells;
  readonly values: ChartCells;
  readonly color?: string;
}

/** Cells of one sheet: one row or one column of them. */
export interface ChartCells {
  readonly sheet: string;
  readonly range: RangeImage;
}

export interface NewAxis {
  readonly title?: string;
  readonly numberFormat?: string;
  readonly minimum?: number;
}

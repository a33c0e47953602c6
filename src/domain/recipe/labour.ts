import type { Design } from '../book/book.ts';
import type { Exact } from '../kernel/exact.ts';

/** Minutes of work that a batch takes: each bar started, and setting up once (contract §5). */
export const labourMinutes = (design: Design, started: Exact | number): Exact =>
  design.labourMinutes.times(started).plus(design.setupMinutes);

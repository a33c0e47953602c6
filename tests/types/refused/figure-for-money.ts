import type { CostLine } from '../../../src/domain/cost/bar-cost.ts';
import { zero } from '../../../src/domain/kernel/exact.ts';

/** A figure of no kind is no cost until somebody says that it is money. */
export const meant: CostLine = { kind: 'labour', name: 'Labour', perBar: zero };

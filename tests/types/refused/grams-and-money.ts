import { asGrams, asMoney } from '../../../src/domain/kernel/measured.ts';
import { one } from '../../../src/domain/kernel/exact.ts';

/** Grams and money have no sum. */
export const meant = asGrams(one).plus(asMoney(one));

import { Exact } from '../kernel/exact.ts';

/**
 * A figure as people type it, whichever sign they set before decimals and between thousands: its value, or what it
 * could mean where it can be read in two ways. Undefined where it is no figure of 0 or more.
 */
export type TypedFigure = { readonly value: Exact } | { readonly either: readonly [Exact, Exact] };

/** Thousands by a space, the two apostrophes that some countries set, a comma or a point. */
const BY_SPACES = /^\d{1,3}(?:[ '’]\d{3})+(?:[.,]\d*)?$/u;
const BY_COMMAS = /^\d{1,3}(?:,\d{3})+\.\d*$|^\d{1,3}(?:,\d{3}){2,}$/u;
const BY_POINTS = /^\d{1,3}(?:\.\d{3})+,\d*$|^\d{1,3}(?:\.\d{3}){2,}$/u;
const PLAIN = /^(?:\d+[.,]?\d*|[.,]\d+)$/u;
const EITHER = /^[1-9]\d{0,2},\d{3}$/u;

/** Reads a figure; `1,234` may be a thousand and more or little more than one, so it is neither. */
export function readFigure(typed: string): TypedFigure | undefined {
  const text = typed.normalize('NFKC').trim().replace(/\s/gu, ' ');
  if (EITHER.test(text)) return { either: [valueOf(text.replace(',', '')), valueOf(text)] };
  if (BY_COMMAS.test(text)) return { value: valueOf(text.replaceAll(',', '')) };
  if (BY_POINTS.test(text)) return { value: valueOf(text.replaceAll('.', '')) };
  if (BY_SPACES.test(text)) return { value: valueOf(text.replace(/[ '’]/gu, '')) };
  return PLAIN.test(text) ? { value: valueOf(text) } : undefined;
}

/** Of digits with at most one sign before the decimals. */
const valueOf = (text: string): Exact =>
  new Exact(text.replace(',', '.').replace(/^\./u, '0.').replace(/\.$/u, ''));

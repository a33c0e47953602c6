import type { Exact } from './exact.ts';

/** `1 bar`, `2 bars`, `0.5 bars`. */
export function count(number: number | Exact, one: string, many = `${one}s`): string {
  return `${number.toString()} ${Number(number) === 1 ? one : many}`;
}

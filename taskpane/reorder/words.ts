import type { Material } from '../../src/domain/book/book.ts';

/** Digits that chance still allows to be told apart. */
const DIGITS = 3;

/** A figure of a simulation, to three digits. */
export const figure = (value: number): string => String(Number(value.toPrecision(DIGITS)));

/** The same with the material's unit. */
export const quantity = (value: number, { unit }: Material): string =>
  unit === 'each' ? figure(value) : `${figure(value)} ${unit}`;

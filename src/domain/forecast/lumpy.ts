import type { Stepper } from './stepper.ts';

export interface LumpyParameters {
  /** Weight of the newest size, met only in periods with demand. */
  readonly alpha: number;
  /** Weight of the newest yes or no of demand, met every period. */
  readonly beta: number;
}

/**
 * Demand with many empty periods: the chance of any demand and its size are smoothed apart, and the
 * forecast is one times the other (Teunter, Syntetos and Babai, European Journal of Operational
 * Research 214, 2011, after Croston, 1972; from memory).
 */
export class Lumpy implements Stepper {
  private readonly parameters: LumpyParameters;
  private chance: number;
  private size: number;

  constructor(parameters: LumpyParameters, chance: number, size: number) {
    this.parameters = parameters;
    this.chance = chance;
    this.size = size;
  }

  predict(): number {
    return this.chance * this.size;
  }

  step(value: number): void {
    const { alpha, beta } = this.parameters;
    const any = value === 0 ? 0 : 1;
    this.chance += beta * (any - this.chance);
    if (any === 1) this.size += alpha * (value - this.size);
  }

  copy(): Lumpy {
    return new Lumpy(this.parameters, this.chance, this.size);
  }
}

/** Demand counts as lumpy from this average number of periods per period with demand (Syntetos and Boylan, 2005; from memory). */
export const LUMPY_INTERVAL = 1.32;

/** Whether so many periods are empty that level and trend mean little. */
export function isLumpy(values: readonly number[]): boolean {
  const filled = values.filter((value) => value !== 0).length;
  return filled > 0 && values.length / filled >= LUMPY_INTERVAL;
}

/** Share of periods with demand and the average size of it, to start from. */
export function lumpyStart(values: readonly number[]): { chance: number; size: number } {
  const filled = values.filter((value) => value !== 0);
  const total = filled.reduce((sum, value) => sum + value, 0);
  return {
    chance: filled.length / values.length,
    size: filled.length === 0 ? 0 : total / filled.length,
  };
}

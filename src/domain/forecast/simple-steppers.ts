import type { Stepper } from './stepper.ts';

/** Every period is as the one before, or as the same period of the season before (seasonal naive). */
export class Naive implements Stepper {
  private readonly lastSeason: number[];
  private at = 0;

  /** The last season's values, oldest first; one value for the plain naive method. */
  constructor(lastSeason: readonly number[]) {
    this.lastSeason = [...lastSeason];
  }

  predict(ahead: number): number {
    return this.lastSeason[(this.at + ahead - 1) % this.lastSeason.length] ?? 0;
  }

  step(value: number): void {
    this.lastSeason[this.at] = value;
    this.at = (this.at + 1) % this.lastSeason.length;
  }

  copy(): Naive {
    return new Naive(this.lastSeason.map((_, index) => this.predict(index + 1)));
  }
}

/** Every period is as the average of all before it. */
export class Mean implements Stepper {
  private total: number;
  private count: number;

  constructor(total: number, count: number) {
    this.total = total;
    this.count = count;
  }

  predict(): number {
    return this.total / this.count;
  }

  step(value: number): void {
    this.total += value;
    this.count += 1;
  }

  copy(): Mean {
    return new Mean(this.total, this.count);
  }
}

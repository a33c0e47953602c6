/** As far as a distribution is ever followed: what is left beyond is less than any business of a soap maker. */
const MOST = 1e6;

/**
 * How many may be asked for, in whole numbers: Poisson where the variance is not above the mean, else negative
 * binomial of the same mean and variance (size r = mean² ÷ (variance − mean)). Both worked out by adding up the
 * logarithms of one chance after the other, so that no mean is too large for them.
 */
export class CountDemand {
  readonly mean: number;
  /** Of the distribution: the mean's own where it is Poisson. */
  readonly variance: number;
  /** Chances of at most 0, 1, 2 … as far as they were asked for. */
  private readonly cumulative: number[] = [];
  private lastLog = 0;

  constructor(mean: number, variance: number) {
    this.mean = mean;
    this.variance = Math.max(mean, variance);
  }

  /** The chance that at most so many are asked for. */
  atMost(number: number): number {
    if (number < 0) return 0;
    if (this.mean === 0) return 1;
    while (this.cumulative.length <= number) this.follow();
    return this.cumulative[number] as number;
  }

  /** The least number that is enough with a chance of `share`, which is below 1. */
  enoughFor(share: number): number {
    let number = 0;
    while (this.atMost(number) < share && number < MOST) number += 1;
    return number;
  }

  /** How many are sold on average where so many are there: demand above them is lost. */
  expectedSold(there: number): number {
    let sold = 0;
    for (let number = 0; number < there; number += 1) sold += 1 - this.atMost(number);
    return sold;
  }

  private follow(): void {
    const number = this.cumulative.length;
    this.lastLog = number === 0 ? this.logOfNone() : this.lastLog + this.logStep(number);
    const before = this.cumulative[number - 1] ?? 0;
    this.cumulative.push(Math.min(1, before + Math.exp(this.lastLog)));
  }

  /** Undefined where it is Poisson. */
  private get size(): number | undefined {
    const more = this.variance - this.mean;
    return more > 0 ? (this.mean * this.mean) / more : undefined;
  }

  private logOfNone(): number {
    const { size, mean } = this;
    return size === undefined ? -mean : -size * Math.log1p(mean / size);
  }

  /** From one number less to this one. */
  private logStep(number: number): number {
    const { size, mean } = this;
    if (size === undefined) return Math.log(mean / number);
    return Math.log(((number - 1 + size) / number) * (mean / (size + mean)));
  }
}

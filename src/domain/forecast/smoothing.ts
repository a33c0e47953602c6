import type { Stepper } from './stepper.ts';

/** The shape of an exponential smoothing: what it follows besides the level. */
export interface SmoothingForm {
  readonly trend: boolean;
  readonly season: 'none' | 'additive' | 'multiplicative';
}

/** Weights of the newest value: all from 0 to 1; `phi` below 1 lets the trend die away. */
export interface SmoothingParameters {
  readonly alpha: number;
  readonly beta: number;
  readonly gamma: number;
  readonly phi: number;
}

/** What is known before the first value is met. */
export interface SmoothingStates {
  readonly level: number;
  readonly trend: number;
  /** One figure for each period of the season, the next period's first; empty without a season. */
  readonly seasonal: readonly number[];
}

/**
 * Exponential smoothing in its error-correcting textbook form, from a level alone (Brown) over level
 * and trend (Holt) to level, trend and season (Winters): ℓ = α(x − s) + (1 − α)(ℓ₋ + φb₋),
 * b = β(ℓ − ℓ₋) + (1 − β)φb₋, s = γ(x − ℓ) + (1 − γ)s₋, with x ÷ s and x ÷ ℓ where the season multiplies.
 */
export class Smoothing implements Stepper {
  private readonly form: SmoothingForm;
  private readonly parameters: SmoothingParameters;
  private level: number;
  private trend: number;
  private readonly seasonal: number[];
  private at = 0;

  constructor(form: SmoothingForm, parameters: SmoothingParameters, states: SmoothingStates) {
    this.form = form;
    this.parameters = parameters;
    this.level = states.level;
    this.trend = form.trend ? states.trend : 0;
    this.seasonal = [...states.seasonal];
  }

  predict(ahead: number): number {
    return this.seasoned(this.level + dampedSteps(this.parameters.phi, ahead) * this.trend, ahead);
  }

  step(value: number): void {
    const { alpha, beta, gamma, phi } = this.parameters;
    const { season, trend } = this.form;
    const figure = this.figure(1);
    const before = this.level;
    const expected = before + phi * this.trend;
    const plain =
      season === 'none' ? value : season === 'additive' ? value - figure : value / figure;
    this.level = alpha * plain + (1 - alpha) * expected;
    if (trend) this.trend = beta * (this.level - before) + (1 - beta) * phi * this.trend;
    if (season === 'none') return;
    const seen = season === 'additive' ? value - this.level : value / this.level;
    this.seasonal[this.at] = gamma * seen + (1 - gamma) * figure;
    this.at = (this.at + 1) % this.seasonal.length;
  }

  copy(): Smoothing {
    return new Smoothing(this.form, this.parameters, this.states());
  }

  /** Where the smoothing stands now, fit to start another from. */
  states(): SmoothingStates {
    const seasonal = this.seasonal.map((_, index) => this.figure(index + 1));
    return { level: this.level, trend: this.trend, seasonal };
  }

  private figure(ahead: number): number {
    return this.seasonal[(this.at + ahead - 1) % this.seasonal.length] ?? 0;
  }

  private seasoned(plain: number, ahead: number): number {
    if (this.form.season === 'none') return plain;
    const figure = this.figure(ahead);
    return this.form.season === 'additive' ? plain + figure : plain * figure;
  }
}

/** φ + φ² + … + φ^ahead; just `ahead` where the trend is not damped. */
function dampedSteps(phi: number, ahead: number): number {
  return phi === 1 ? ahead : (phi * (1 - phi ** ahead)) / (1 - phi);
}

/** How often each thing is measured; the first time is cold. */
export const ROUNDS = 15;

/** Milliseconds that some work takes, and what it answers. */
export function timed(work) {
  const start = performance.now();
  const answer = work();
  return [performance.now() - start, answer];
}

/** Figures by name over many rounds. */
export class Figures {
  rounds = [];

  add(round) {
    this.rounds.push(round);
  }

  /** All values of one figure, the first round's first. */
  of(name) {
    return this.rounds.map((round) => round[name]);
  }

  min(name) {
    return Math.min(...this.of(name));
  }

  print(ratios) {
    printRow('', ['cold', 'min', 'median', 'max']);
    for (const name of Object.keys(this.rounds[0])) printRow(name, this.shown(name));
    // Least to least and median to median: one round's two times may differ in what else the machine did.
    for (const [above, below] of ratios) {
      const divisors = this.shown(below);
      const quotients = this.shown(above).map((value, at) => value / divisors[at]);
      printRow(`${above} ÷ ${below}`, quotients);
    }
  }

  /** The first, the least, the median and the greatest of a figure. */
  shown(name) {
    const values = this.of(name);
    const sorted = [...values].sort((a, b) => a - b);
    return [values[0], sorted[0], sorted[sorted.length >> 1], sorted.at(-1)];
  }
}

function printRow(name, cells) {
  const texts = cells.map((cell) => (typeof cell === 'number' ? cell.toFixed(2) : cell));
  console.log(`  ${name.padEnd(50)}${texts.map((text) => text.padStart(9)).join('')}`);
}

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

  print() {
    console.log(`  ${''.padEnd(46)}${row(['cold', 'min', 'median', 'max'])}`);
    for (const name of Object.keys(this.rounds[0])) {
      const values = this.of(name);
      const sorted = [...values].sort((a, b) => a - b);
      const shown = [values[0], sorted[0], sorted[sorted.length >> 1], sorted.at(-1)];
      console.log(`  ${name.padEnd(46)}${row(shown.map((value) => value.toFixed(2)))}`);
    }
  }
}

const row = (texts) => texts.map((text) => text.padStart(9)).join('');

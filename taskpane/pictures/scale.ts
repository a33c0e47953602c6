/** Round numbers from 0 to at least `largest`, a few of them: steps of 1, 2 or 5 times a power of ten. */
export function niceTicks(largest: number, most = 5): number[] {
  if (!(largest > 0)) return [0, 1];
  const raw = largest / most;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5, 10].find((times) => times * power >= raw) ?? 10) * power;
  const ticks = [0];
  // Each is worked out afresh, so that no binary noise adds up.
  while ((ticks.at(-1) ?? 0) < largest) ticks.push(Number((step * ticks.length).toPrecision(12)));
  return ticks;
}

/** A length of a picture to a tenth, which is finer than any screen. */
export const tenth = (length: number): number => Math.round(length * 10) / 10;

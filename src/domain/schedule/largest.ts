/** The largest count up to `most` that fits, 0 if not even one; what fits a number fits any smaller one. */
export function largest(most: number, fits: (count: number) => boolean): number {
  // Most days are full: the cheapest question first.
  if (most < 1 || !fits(1)) return 0;
  let enough = 1;
  let tooMany = most + 1;
  while (tooMany - enough > 1) {
    const middle = Math.floor((enough + tooMany) / 2);
    if (fits(middle)) enough = middle;
    else tooMany = middle;
  }
  return enough;
}

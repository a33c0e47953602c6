/** Chance that is the same on every machine: the same seed rolls the same numbers, 0 ≤ roll < 1. */
export function dice(seed: number): () => number {
  // Mulberry32, a public-domain 32-bit generator (from memory); any even spread would do here.
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let bits = Math.imul(state ^ (state >>> 15), state | 1);
    bits ^= bits + Math.imul(bits ^ (bits >>> 7), bits | 61);
    return ((bits ^ (bits >>> 14)) >>> 0) / 0x1_0000_0000;
  };
}

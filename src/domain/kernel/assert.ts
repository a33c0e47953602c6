/** Stops on a mistake in our own code; what a maker types is never checked here. */
export function assert(condition: boolean, mistake: string): asserts condition {
  if (!condition) throw new Error(`A mistake in Pour Ledger itself: ${mistake}`);
}

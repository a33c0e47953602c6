import { defineConfig } from 'vitest/config';
import { ClosingLine } from './closing-line.ts';
import { testsByNeed } from './what-tests-need.ts';

const root = new URL('..', import.meta.url).pathname;

/** What needs least runs first: a fault in the core is told before the first browser starts. */
const projects = Object.entries(testsByNeed(root)).map(([name, include], groupOrder) => ({
  extends: true as const,
  test: { name, include: [...include], sequence: { groupOrder } },
}));

export default defineConfig({
  test: {
    root,
    reporters: ['default', new ClosingLine()],
    projects,
    // One real browser and one LibreOffice at a time: the machine has two cores.
    maxWorkers: 2,
    // For what hangs, never for what is slow: a machine with ten times as much to do fails nothing.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    expect: { poll: { timeout: 120_000 } },
  },
});

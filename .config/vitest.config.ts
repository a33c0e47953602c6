import { defineConfig } from 'vitest/config';
import { ClosingLine } from './closing-line.ts';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    reporters: ['default', new ClosingLine()],
    include: ['tests/**/*.test.ts'],
    // One real browser and one LibreOffice at a time: the machine has two cores.
    maxWorkers: 2,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});

import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one plain line of counts, which any CI can read. */
export class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()]);
    const count = (state: string): number =>
      tests.filter((test) => test.result().state === state).length;
    // A file that could not be loaded holds no test, and is a failure all the same.
    const broken = modules.filter((module) => module.errors().length > 0).length;
    console.log(
      `${count('passed')} passed, ${count('failed') + broken} failed, ${count('skipped')} skipped`,
    );
  }
}

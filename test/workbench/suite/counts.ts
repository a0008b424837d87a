/** How a run of tests inside an extension host ended, as `npm test` tells it. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly failedTests: readonly { readonly title: string; readonly reason: string }[];
}

/** Runs the tests that `start` starts, and counts; `watch` is told of the run as it begins. */
export function countedRun(
  start: (done: () => void) => Mocha.Runner,
  watch: (runner: Mocha.Runner) => void = () => undefined,
): Promise<Counts> {
  return new Promise((resolve) => {
    const failedTests: { title: string; reason: string }[] = [];
    const runner = start(() => {
      const { passes = 0, failures = 1 } = runner.stats ?? {};
      resolve({ passed: passes, failed: failures, failedTests });
    });
    runner.on('fail', (test, error) => {
      failedTests.push({ title: test.fullTitle(), reason: `${error?.stack ?? error}` });
    });
    watch(runner);
  });
}

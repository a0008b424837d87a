/** How a run of tests inside an extension host ended, as `npm test` tells it. */
export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly failedTests: readonly { readonly title: string; readonly reason: string }[];
  readonly triedTwice: readonly string[];
}

/** Runs the tests that `start` starts, and counts; `watch` is told of the run as it begins. */
export function countedRun(
  start: (done: () => void) => Mocha.Runner,
  watch: (runner: Mocha.Runner) => void = () => undefined,
): Promise<Counts> {
  return new Promise((resolve) => {
    const failedTests: { title: string; reason: string }[] = [];
    const retried = new Set<string>();
    const runner = start(() => {
      const { passes = 0, failures = 1 } = runner.stats ?? {};
      const triedTwice = [...retried].filter((title) =>
        failedTests.every((failed) => failed.title !== title),
      );
      resolve({ passed: passes, failed: failures, failedTests, triedTwice });
    });
    runner.on('retry', (test) => retried.add(test.fullTitle()));
    runner.on('fail', (test, error) => {
      failedTests.push({ title: test.fullTitle(), reason: `${error?.stack ?? error}` });
    });
    watch(runner);
  });
}

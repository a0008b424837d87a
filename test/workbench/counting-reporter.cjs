// Mocha's readable report, and beside it as JSON in the file that PROPSOFF_COUNTS names: the counts, what failed and
// why, and what failed at first only.
const { writeFileSync } = require('node:fs');
const { reporters } = require('mocha');

module.exports = class CountingReporter extends reporters.Spec {
  constructor(runner, options) {
    super(runner, options);
    const failedTests = [];
    const retried = new Set();
    runner.on('fail', (test, error) => {
      failedTests.push({ title: test.fullTitle(), reason: `${error?.stack ?? error}` });
    });
    runner.on('retry', (test) => retried.add(test.fullTitle()));
    runner.once('end', () => {
      const { passes, failures } = runner.stats;
      const path = process.env.PROPSOFF_COUNTS;
      const triedTwice = [...retried].filter((title) =>
        failedTests.every((failed) => failed.title !== title),
      );
      const counts = { passed: passes, failed: failures, failedTests, triedTwice };
      if (path) writeFileSync(path, JSON.stringify(counts));
    });
  }
};

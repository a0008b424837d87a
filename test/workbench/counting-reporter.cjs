// Mocha's readable report, and beside it the counts, and what failed and why, as JSON in the file that
// PROPSOFF_COUNTS names.
const { writeFileSync } = require('node:fs');
const { reporters } = require('mocha');

module.exports = class CountingReporter extends reporters.Spec {
  constructor(runner, options) {
    super(runner, options);
    const failedTests = [];
    runner.on('fail', (test, error) => {
      failedTests.push({ title: test.fullTitle(), reason: `${error?.stack ?? error}` });
    });
    runner.once('end', () => {
      const { passes, failures } = runner.stats;
      const path = process.env.PROPSOFF_COUNTS;
      if (path) writeFileSync(path, JSON.stringify({ passed: passes, failed: failures, failedTests }));
    });
  }
};

// Mocha's readable report, and beside it as JSON in the file that PROPSOFF_COUNTS names: the counts, what failed and
// why, what failed at first only, and what was left out. A test may be left out for what is not there, which its title
// says; any other that is skipped has failed.
const { writeFileSync } = require('node:fs');
const { reporters } = require('mocha');

const leftOutBeginning = 'is left out: ';

module.exports = class CountingReporter extends reporters.Spec {
  constructor(runner, options) {
    super(runner, options);
    const failedTests = [];
    const retried = new Map();
    const leftOut = [];
    let skipped = 0;
    const reasonOf = (error) => `${error?.stack ?? error}`;
    runner.on('fail', (test, error) => {
      failedTests.push({ title: test.fullTitle(), reason: reasonOf(error) });
    });
    runner.on('pending', (test) => {
      if (test.title.startsWith(leftOutBeginning)) {
        leftOut.push(test.fullTitle());
        return;
      }
      skipped += 1;
      failedTests.push({ title: test.fullTitle(), reason: 'it was skipped' });
    });
    runner.on('retry', (test, error) => retried.set(test.fullTitle(), reasonOf(error)));
    runner.once('end', () => {
      const { passes, failures } = runner.stats;
      const path = process.env.PROPSOFF_COUNTS;
      const triedTwice = [...retried]
        .filter(([title]) => failedTests.every((failed) => failed.title !== title))
        .map(([title, reason]) => ({ title, reason }));
      const counts = { passed: passes, failed: failures + skipped, failedTests, triedTwice, leftOut };
      if (path) writeFileSync(path, JSON.stringify(counts));
    });
  }
};

// Mocha's readable report, and beside it the counts as JSON in the file that PROPSOFF_COUNTS names.
const { writeFileSync } = require('node:fs');
const { reporters } = require('mocha');

module.exports = class CountingReporter extends reporters.Spec {
  constructor(runner, options) {
    super(runner, options);
    runner.once('end', () => {
      const { passes, failures } = runner.stats;
      const path = process.env.PROPSOFF_COUNTS;
      if (path) writeFileSync(path, JSON.stringify({ passed: passes, failed: failures }));
    });
  }
};

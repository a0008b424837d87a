// One setting for all suites that run outside the editor. Skipped and singled-out tests fail the run.
module.exports = {
  require: ['tsx/cjs'],
  reporter: 'test/workbench/counting-reporter.cjs',
  timeout: 60_000,
  forbidOnly: true,
  forbidPending: true,
};

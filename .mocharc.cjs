// One setting for all suites that run outside the editor. Skipped and singled-out tests fail the run.
module.exports = {
  // The second is for what the engine loads on demand.
  require: ['tsx/cjs', 'tsx/esm', './test/support/patient-workers.cjs', './test/support/same-draws.cjs'],
  reporter: 'test/workbench/counting-reporter.cjs',
  timeout: 60_000,
  forbidOnly: true,
  forbidPending: true,
  // The service that compiles TypeScript may outlive the last test and would keep the run from ending.
  exit: true,
};

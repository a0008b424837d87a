// One setting for all suites that run outside the editor. Singled-out tests fail the run; so do skipped ones, by the
// reporter, but for those that say what is not there.
module.exports = {
  require: [
    './test/support/typescript.cjs',
    './test/support/patient-workers.cjs',
    './test/support/same-draws.cjs',
  ],
  reporter: 'test/workbench/counting-reporter.cjs',
  timeout: 60_000,
  forbidOnly: true,
  // The service that compiles TypeScript may outlive the last test and would keep the run from ending.
  exit: true,
};

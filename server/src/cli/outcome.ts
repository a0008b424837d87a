/** What the exit code of the command line says. Hooks and CI rely on these; they don't change. */
export const exitCodes = {
  /** Nothing to fix. */
  fine: 0,
  /** Findings at or above `--fail-on`; or a script that is not formatted, or that a board does not hold. */
  findings: 1,
  /** An unreadable file, an unknown option or name. */
  couldNotRun: 2,
} as const;

/** The command can't be carried out as it was typed. Its message is one line for the person who typed it. */
export class UsageError extends Error {}

import type { CheckedFile } from './checked-file';
import { countsOf } from './counts';

/** The report for programs. Its form is fixed: `version` goes up when it changes. */
export function jsonReport(checked: readonly CheckedFile[]): string {
  const files = checked.map(({ path, told, omitted, counts }) => ({
    path,
    findings: told.map(({ line: _, ...finding }) => finding),
    ...(omitted === 0 ? {} : { omitted }),
    counts,
  }));
  return `${JSON.stringify({ version: 1, files, counts: countsOf(checked) }, null, 2)}\n`;
}

import type { Catalog } from '../../catalog/catalog';
import { type CheckedFile, countsOf } from './checked-file';
import { jsonText } from './visible';

/** The report for programs. Its form is fixed: `version` goes up when it changes. */
export function jsonReport(checked: readonly CheckedFile[], { replacements }: Catalog): string {
  const files = checked.map(({ path, readAs, findings, omitted, counts, withheld }) => ({
    path,
    ...(readAs === null ? {} : { readAs }),
    findings: findings.map(({ line: _, ...finding }) => finding),
    ...(omitted === 0 ? {} : { omitted }),
    counts,
    ...(withheld.length === 0 ? {} : { withheld }),
  }));
  const replaced = replacements.map(({ levels, ...one }) => ({ ...one, ...levels }));
  return jsonText({ version: 1, files, replaced, counts: countsOf(checked) });
}

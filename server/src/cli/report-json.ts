import type { Finding, Fix } from '../checks/finding';
import { countByLevel } from '../checks/order';
import { adviceOf, messageOf } from '../checks/render';
import { editsOf } from '../features/fix-edits';
import { rangeOf } from '../features/range';
import type { Checked } from './check';
import { toldOf } from './shown-findings';

/** The report for programs. Its form is fixed: `version` goes up when it changes. */
export function jsonReport(checked: readonly Checked[], pathOf: (uri: string) => string): string {
  const files = checked.map(({ script, findings }) => {
    const { told, omitted } = toldOf(findings);
    const pathFor = (uri: string) => (uri === script.uri ? script.path : pathOf(uri));
    return {
      path: script.path,
      findings: told.map((finding) => jsonFinding(finding, pathFor)),
      ...(omitted === 0 ? {} : { omitted }),
      counts: countByLevel(findings),
    };
  });
  const counts = countByLevel(checked.flatMap(({ findings }) => findings));
  return `${JSON.stringify({ version: 1, files, counts }, null, 2)}\n`;
}

function fixEdits(fix: Fix, pathFor: (uri: string) => string) {
  return editsOf(fix).flatMap(({ uri, edits }) => edits.map((edit) => ({ path: pathFor(uri), ...edit })));
}

function jsonFinding(finding: Finding, pathFor: (uri: string) => string) {
  return {
    id: finding.check.id,
    level: finding.level,
    message: messageOf(finding),
    advice: adviceOf(finding),
    accepted: finding.accepted,
    pack: finding.pack,
    range: rangeOf(finding.place),
    related: finding.related.map(({ place, message }) => ({
      path: pathFor(place.script.uri),
      range: rangeOf(place),
      message,
    })),
    fixes: finding.fixes.map((fix) => ({ title: fix.title, edits: fixEdits(fix, pathFor) })),
  };
}

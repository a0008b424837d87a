import type { Finding, Place } from '../checks/finding';
import { countByLevel } from '../checks/order';
import { adviceOf, messageOf } from '../checks/render';
import { rangeOf } from '../features/range';
import type { Checked } from './check';

/** The report for programs. Its form is fixed: `version` goes up when it changes. */
export function jsonReport(checked: readonly Checked[], pathOf: (uri: string) => string): string {
  const files = checked.map(({ script, findings }) => ({
    path: script.path,
    findings: findings.map((finding) => jsonFinding(finding, (place) => pathFor(place, script, pathOf))),
    counts: countByLevel(findings),
  }));
  const counts = countByLevel(checked.flatMap(({ findings }) => findings));
  return `${JSON.stringify({ version: 1, files, counts }, null, 2)}\n`;
}

function pathFor(place: Place, script: Checked['script'], pathOf: (uri: string) => string): string {
  return place.script.uri === script.uri ? script.path : pathOf(place.script.uri);
}

function jsonFinding(finding: Finding, pathFor: (place: Place) => string) {
  return {
    id: finding.check.id,
    level: finding.level,
    message: messageOf(finding),
    advice: adviceOf(finding),
    accepted: finding.accepted,
    pack: finding.pack,
    range: rangeOf(finding.place),
    related: finding.related.map(({ place, message }) => ({
      path: pathFor(place),
      range: rangeOf(place),
      message,
    })),
    fixes: finding.fixes.map(({ title, edits }) => ({
      title,
      edits: edits.map(({ place, newText }) => ({ path: pathFor(place), range: rangeOf(place), newText })),
    })),
  };
}

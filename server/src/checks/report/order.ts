import type { Level } from '../../catalog/model/check';
import type { Finding } from './finding';

export const levels: readonly Level[] = ['must-fix', 'risk', 'note', 'tidy'];

/** In the order of the script; on one place, the worst first. */
export function inScriptOrder(findings: readonly Finding[]): readonly Finding[] {
  return findings
    .map(numbered)
    .sort(compare)
    .map(({ finding }) => finding);
}

interface Numbered {
  readonly finding: Finding;
  readonly line: number;
}

function numbered(finding: Finding): Numbered {
  const { script, line } = finding.place;
  return { finding, line: script.lineNumber(line) };
}

function compare(one: Numbered, other: Numbered): number {
  return (
    one.line - other.line ||
    one.finding.place.start - other.finding.place.start ||
    levels.indexOf(one.finding.level) - levels.indexOf(other.finding.level) ||
    compareText(one.finding.check.id, other.finding.check.id) ||
    compareText(one.finding.pack ?? '', other.finding.pack ?? '')
  );
}

export function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

export function countByLevel(findings: readonly Finding[]): Readonly<Record<Level, number>> {
  const counts = { 'must-fix': 0, risk: 0, note: 0, tidy: 0 };
  for (const { level } of findings) counts[level] += 1;
  return counts;
}

import type { Level } from '../catalog/model/check';
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

/**
 * The findings of one script in its order, kept through edits: lines that stay are never in another order than
 * before, so only what has come is put in its place. All that is found at one place by one check is in one piece.
 */
export class ScriptOrder {
  private pieces: ReadonlySet<readonly Finding[]> = new Set();
  private ordered: readonly Finding[] = [];

  of(list: readonly (readonly Finding[])[]): readonly Finding[] {
    const pieces = new Set(list);
    const gone = new Set([...this.pieces].filter((piece) => !pieces.has(piece)).flat());
    const fresh = list.filter((piece) => !this.pieces.has(piece)).flat();
    const come = fresh.filter((finding) => !gone.delete(finding));
    const stayed = gone.size === 0 ? this.ordered : this.ordered.filter((finding) => !gone.has(finding));
    this.pieces = pieces;
    this.ordered =
      come.length * costOfOne > stayed.length ? inScriptOrder([...stayed, ...come]) : merged(stayed, come);
    return this.ordered;
  }
}

/** To put one finding in its place costs about as much as to sort so many. */
const costOfOne = 16;

function merged(ordered: readonly Finding[], come: readonly Finding[]): readonly Finding[] {
  const all = ordered.slice();
  for (const finding of inScriptOrder(come)) all.splice(placeFor(numbered(finding), all), 0, finding);
  return all;
}

/** Behind all that come before it, or stand at the same place. */
function placeFor(one: Numbered, ordered: readonly Finding[]): number {
  let low = 0;
  let high = ordered.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const other = ordered[middle];
    if (other !== undefined && compare(numbered(other), one) <= 0) low = middle + 1;
    else high = middle;
  }
  return low;
}

export function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

export function countByLevel(findings: readonly Finding[]): Readonly<Record<Level, number>> {
  const counts = { 'must-fix': 0, risk: 0, note: 0, tidy: 0 };
  for (const { level } of findings) counts[level] += 1;
  return counts;
}

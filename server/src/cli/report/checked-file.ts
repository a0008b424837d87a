import type { BoardLayer } from '../../board/layer/layer';
import type { Catalog } from '../../catalog/catalog';
import type { Level } from '../../catalog/model/check';
import type { Finding, Fix } from '../../checks/report/finding';
import { countByLevel, levels } from '../../checks/report/order';
import { adviceOf, messageOf } from '../../checks/report/render';
import type { ReadAs } from '../../craft/read-as';
import { boardAnswers } from '../../features/board/answers';
import { rangeInText } from '../../features/board/places';
import { editsOf } from '../../features/fix-edits';
import { type Range, rangeOf } from '../../features/range';

/** Something found in a file, as every report has it. */
export interface ReportedFinding {
  readonly id: string;
  readonly level: Level;
  readonly message: string;
  readonly advice: string;
  readonly accepted: string | null;
  readonly pack: string | null;
  readonly range: Range;
  /** The whole line on which it starts. */
  readonly line: string;
  readonly related: readonly { readonly path: string; readonly range: Range; readonly message: string }[];
  /** Only the report for programs has them. */
  readonly fixes: readonly ReportedFix[];
}

interface ReportedFix {
  readonly title: string;
  readonly edits: readonly { readonly path: string; readonly range: Range; readonly newText: string }[];
}

/** A file that was checked. */
export interface CheckedFile {
  readonly path: string;
  /** Whether it adds to the catalogue, and is no script and no board's text. */
  readonly isAddition: boolean;
  /** What a script was taken for; null for a file that adds to the catalogue. */
  readonly readAs: ReadAs | null;
  readonly findings: readonly ReportedFinding[];
  /** How many more were found; all of them are counted. */
  readonly omitted: number;
  readonly counts: Readonly<Record<Level, number>>;
}

/** What is known of the files that findings lead to. */
export interface Around {
  readonly pathFor: (uri: string) => string;
  /** What a board's text says; undefined for a script. */
  readonly layerOf: (uri: string) => BoardLayer | undefined;
  readonly catalog: Catalog;
}

function rangeIn(layer: BoardLayer | undefined, range: Range): Range {
  return layer === undefined ? range : rangeInText(layer, range);
}

/** What was found, in words, so that nothing of the craft is held any more. `hasFixes`: a fix may cost a guess. */
export function checkedScript(
  path: string,
  readAs: ReadAs,
  findings: readonly Finding[],
  around: Around,
  hasFixes: boolean,
): CheckedFile {
  const worst = worstOf(findings);
  return {
    path,
    isAddition: false,
    readAs,
    findings: worst.findings.map((finding) => reportedFinding(finding, around, hasFixes)),
    omitted: worst.omitted,
    counts: countByLevel(findings),
  };
}

function reportedFinding(finding: Finding, around: Around, hasFixes: boolean): ReportedFinding {
  return {
    id: finding.check.id,
    level: finding.level,
    message: messageOf(finding),
    advice: adviceOf(finding),
    accepted: finding.accepted,
    pack: finding.pack,
    range: rangeOf(finding.place),
    line: finding.place.line.text,
    related: finding.related.map(({ place, message }) => ({
      path: around.pathFor(place.script.uri),
      range: rangeIn(around.layerOf(place.script.uri), rangeOf(place)),
      message,
    })),
    fixes: hasFixes ? finding.fixes.flatMap((fix) => reportedFix(fix, around)) : [],
  };
}

/** None where a board's text has no words for it. */
function reportedFix(fix: Fix, { pathFor, layerOf, catalog }: Around): readonly ReportedFix[] {
  const all: ReportedFix['edits'][number][] = [];
  for (const { uri, edits } of editsOf(fix)) {
    const layer = layerOf(uri);
    const own = layer === undefined ? edits : boardAnswers().boardEdits(layer, catalog, edits);
    if (own === null) return [];
    all.push(...own.map((edit) => ({ path: pathFor(uri), ...edit })));
  }
  return [{ title: fix.title, edits: all }];
}

/** How much was found in all files together. */
export function countsOf(checked: readonly CheckedFile[]): Readonly<Record<Level, number>> {
  const sum = (level: Level) => checked.reduce((count, { counts }) => count + counts[level], 0);
  return { 'must-fix': sum('must-fix'), risk: sum('risk'), note: sum('note'), tidy: sum('tidy') };
}

/** Findings that are reported of one script. Whoever has more mends some and asks again; they are counted all the same. */
export const mostReported = 1000;

export interface WorstFindings<T> {
  /** The worst of them, in the order that they came in. */
  readonly findings: readonly T[];
  /** How many more there are. */
  readonly omitted: number;
}

export function worstOf<T extends { readonly level: Level }>(findings: readonly T[]): WorstFindings<T> {
  if (findings.length <= mostReported) return { findings, omitted: 0 };
  const kept = new Set<T>();
  for (const level of levels) {
    for (const finding of findings) {
      if (kept.size === mostReported) break;
      if (finding.level === level) kept.add(finding);
    }
  }
  return {
    findings: findings.filter((finding) => kept.has(finding)),
    omitted: findings.length - mostReported,
  };
}

import type { BoardLayer } from '../../board/layer/layer';
import type { Level } from '../../catalog/model/check';
import type { Finding, Fix } from '../../checks/report/finding';
import { countByLevel, levels } from '../../checks/report/order';
import { fixTitle } from '../../checks/report/render';
import type { Craft } from '../../craft/craft';
import { notLookedAt, type ReadAs } from '../../craft/read-as';
import { boardAnswers } from '../../features/board/answers';
import { adviceIn, messageIn, relatedIn, type TextsOfBoards } from '../../features/board/finding-words';
import { rangeInText } from '../../features/board/places';
import { editsOf } from '../../features/fix-edits';
import { type Range, rangeOf, type TextEdit } from '../../features/range';
import { notKnown, type WithheldWithReason, withheldOf } from '../../sheet/not-known';
import { judgedBy, withheldFigures } from '../../sheet/withheld-figures';

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
  /** What checks would have judged it by, had it been known. */
  readonly withheld: readonly WithheldWithReason[];
  /** The same for people. */
  readonly notKnown: readonly string[];
}

/** Of what is no craft's script. No board knows all of its craft: nobody is told what figures would take. */
export const nothingWithheld: Pick<CheckedFile, 'withheld' | 'notKnown'> = { withheld: [], notKnown: [] };

/** What is known of the files that findings lead to. */
export interface Around extends TextsOfBoards {
  readonly pathFor: (uri: string) => string;
}

function rangeIn(layer: BoardLayer | undefined, range: Range): Range {
  return layer === undefined ? range : rangeInText(layer, range);
}

/** What was found, in words, so that nothing of the craft is held any more. `hasFixes`: a fix may cost a guess. */
export function checkedScript(
  path: string,
  craft: Craft,
  findings: readonly Finding[],
  around: Around,
  hasFixes: boolean,
): CheckedFile {
  const worst = worstOf(findings);
  const withheld = withheldFigures(craft, judgedBy);
  return {
    path,
    isAddition: false,
    readAs: craft.readAs(),
    findings: worst.findings.map((finding) => reportedFinding(finding, around, hasFixes)),
    omitted: worst.omitted,
    counts: countByLevel(findings),
    withheld: withheldOf(craft, withheld),
    notKnown: notKnown(craft, withheld).map(({ text }) => text),
  };
}

function reportedFinding(finding: Finding, around: Around, hasFixes: boolean): ReportedFinding {
  return {
    id: finding.check.id,
    level: finding.level,
    message: messageIn(around, finding),
    advice: adviceIn(around, finding),
    accepted: finding.accepted,
    pack: finding.pack,
    range: rangeOf(finding.place),
    line: finding.place.line.text,
    related: finding.related.map((related) => ({
      path: around.pathFor(related.place.script.uri),
      range: rangeIn(around.layer(related.place.script.uri), rangeOf(related.place)),
      message: relatedIn(around, related),
    })),
    fixes: hasFixes ? finding.fixes.flatMap((fix) => reportedFix(fix, around)) : [],
  };
}

/** None where a board's text has no words for it. */
function reportedFix(fix: Fix, around: Around): readonly ReportedFix[] {
  const files = editsOf(fix);
  const [first, ...others] = files;
  const layer = first === undefined ? undefined : around.layer(first.uri);
  if (first !== undefined && layer !== undefined && others.length === 0) {
    const { boardFix, boardWords } = boardAnswers();
    const own = boardFix(layer, boardWords(layer, around.catalog), fix, files);
    const path = around.pathFor(first.uri);
    return own === null
      ? []
      : [{ title: `${own.title}, in ${path}`, edits: own.edits.map((edit) => reportedEdit(path, edit)) }];
  }
  const all = files.flatMap(({ uri, edits }) => edits.map((edit) => reportedEdit(around.pathFor(uri), edit)));
  return [{ title: fixTitle(fix), edits: all }];
}

/** What is left to be typed over is for an editor alone. */
export function reportedEdit(path: string, { range, newText }: TextEdit): ReportedFix['edits'][number] {
  return { path, range, newText };
}

/** The finding that says the same as what follows. */
const saysPart = 'safe/read-as-part';

/** What was not looked at and what is not known, beside what was found: never passed over as if all had been seen. */
export function notSeen({ readAs, findings, notKnown }: CheckedFile): readonly string[] {
  const isSaid = readAs === null || findings.some(({ id }) => id === saysPart);
  const unchecked = isSaid ? null : notLookedAt(readAs);
  return [...(unchecked === null ? [] : [unchecked]), ...notKnown];
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

import type { Level } from '../../catalog/model/check';
import type { Finding, Fix } from '../../checks/report/finding';
import { countByLevel } from '../../checks/report/order';
import { adviceOf, messageOf } from '../../checks/report/render';
import type { ReadAs } from '../../craft/read-as';
import { editsOf } from '../../features/fix-edits';
import { type Range, rangeOf } from '../../features/range';
import { toldOf } from './shown-findings';

/** Something found in a file, as both reports tell it. */
export interface Told {
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
  readonly fixes: readonly ToldFix[];
}

interface ToldFix {
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
  readonly told: readonly Told[];
  /** How many more were found; all of them are counted. */
  readonly omitted: number;
  readonly counts: Readonly<Record<Level, number>>;
}

/** What was found, told so that nothing of the craft is held any more. `hasFixes`: a fix may cost a guess. */
export function checkedScript(
  path: string,
  readAs: ReadAs,
  findings: readonly Finding[],
  pathFor: (uri: string) => string,
  hasFixes: boolean,
): CheckedFile {
  const { told, omitted } = toldOf(findings);
  return {
    path,
    isAddition: false,
    readAs,
    told: told.map((finding) => toldFinding(finding, pathFor, hasFixes)),
    omitted,
    counts: countByLevel(findings),
  };
}

function toldFinding(finding: Finding, pathFor: (uri: string) => string, hasFixes: boolean): Told {
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
      path: pathFor(place.script.uri),
      range: rangeOf(place),
      message,
    })),
    fixes: hasFixes ? finding.fixes.map((fix) => ({ title: fix.title, edits: fixEdits(fix, pathFor) })) : [],
  };
}

function fixEdits(fix: Fix, pathFor: (uri: string) => string): ToldFix['edits'] {
  return editsOf(fix).flatMap(({ uri, edits }) => edits.map((edit) => ({ path: pathFor(uri), ...edit })));
}

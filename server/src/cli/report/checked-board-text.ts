import type { Translation } from '../../board/translation';
import { translatorOf } from '../../board/translator-of';
import type { Catalog } from '../../catalog/catalog';
import type { Finding } from '../../checks/report/finding';
import { adviceOf, messageOf } from '../../checks/report/render';
import type { ReadAs } from '../../craft/read-as';
import { boardEdits } from '../../features/board/edits';
import { rangeInText } from '../../features/board/places';
import type { BoardProblem } from '../../features/board/problems';
import { countsOfText, toldText } from '../../features/board/told';
import { editsOf } from '../../features/fix-edits';
import { rangeOf } from '../../features/range';
import { splitLines } from '../../language/split-lines';
import { type CheckedFile, type ReportedFinding, worstOf } from './checked-file';

/** A file with this ending holds a board's own text. */
export const boardTextEnding = '.boardtext';

/** A board's text as a script; null where no profile knows it. */
export function translatedText(catalog: Catalog, text: string, named: string | null): Translation | null {
  const lines = splitLines(text).map((line) => line.text);
  return translatorOf(catalog, text, named)?.translate(lines) ?? null;
}

/** What was found in a board's text, at its own places. `findings`: those of the script that it became. */
export function checkedBoardText(
  path: string,
  readAs: ReadAs,
  translation: Translation | null,
  findings: readonly Finding[],
  catalog: Catalog,
): CheckedFile {
  const text = toldText(translation, findings, catalog);
  const all = [
    ...text.problems.map((problem) => reportedProblem(problem, path, translation)),
    ...text.findings.map((finding) => reportedFinding(finding, path, translation, catalog)),
  ].sort((one, other) => one.range.start.line - other.range.start.line);
  return { path, isAddition: false, readAs, ...worstOf(all), counts: countsOfText(text) };
}

function reportedProblem(
  { check, message, advice, range, fixes }: BoardProblem,
  path: string,
  translation: Translation | null,
): ReportedFinding {
  const line = lineOf(translation, range.start.line);
  const described = { id: check.id, level: check.level, message, advice, accepted: null, pack: null };
  const own = fixes.map(({ title, edits }) => ({ title, edits: edits.map((edit) => ({ path, ...edit })) }));
  return { ...described, range, line, related: [], fixes: own };
}

function reportedFinding(
  finding: Finding,
  path: string,
  translation: Translation | null,
  catalog: Catalog,
): ReportedFinding {
  const { check, level, accepted, pack, place, related } = finding;
  const range = rangeInText(translation, rangeOf(place));
  return {
    id: check.id,
    level,
    message: messageOf(finding),
    advice: adviceOf(finding),
    accepted,
    pack,
    range,
    line: lineOf(translation, range.start.line),
    related: related.map((one) => ({
      path,
      range: rangeInText(translation, rangeOf(one.place)),
      message: one.message,
    })),
    // Only the report for programs asks for them. What the board has no words for is not offered.
    get fixes() {
      return finding.fixes.flatMap((fix) => {
        const edits = editsOf(fix).flatMap((file) => file.edits);
        const own = translation === null ? null : boardEdits(translation, catalog, edits);
        return own === null ? [] : [{ title: fix.title, edits: own.map((edit) => ({ path, ...edit })) }];
      });
    },
  };
}

function lineOf(translation: Translation | null, number: number): string {
  return translation?.lines[number]?.text ?? '';
}

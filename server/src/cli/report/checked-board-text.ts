import type { BoardLayer } from '../../board/layer/layer';
import type { Catalog } from '../../catalog/catalog';
import type { Finding } from '../../checks/report/finding';
import type { ReadAs } from '../../craft/read-as';
import { boardAnswers } from '../../features/board/answers';
import { rangeInText } from '../../features/board/places';
import type { BoardProblem } from '../../features/board/problems';
import type { BoardWords } from '../../features/board/words/board-words';
import { editsOf } from '../../features/fix-edits';
import { rangeOf } from '../../features/range';
import {
  type CheckedFile,
  nothingWithheld,
  type ReportedFinding,
  reportedEdit,
  worstOf,
} from './checked-file';

/** A file with this ending holds a board's own text. */
export const boardTextEnding = '.boardtext';

/** What was found in a board's text, at its own places. `findings`: those of the script that it became. */
export function checkedBoardText(
  path: string,
  readAs: ReadAs,
  layer: BoardLayer,
  findings: readonly Finding[],
  catalog: Catalog,
): CheckedFile {
  const { countsOfText, boardTextReport, boardWords } = boardAnswers();
  const words = boardWords(layer, catalog);
  const text = boardTextReport(layer, findings, catalog);
  const all = [
    ...text.problems.map((problem) => reportedProblem(problem, path, layer)),
    ...text.findings.map((finding) => reportedFinding(finding, path, layer, words)),
  ].sort((one, other) => one.range.start.line - other.range.start.line);
  return { path, isAddition: false, readAs, ...worstOf(all), counts: countsOfText(text), ...nothingWithheld };
}

function reportedProblem(
  { check, message, advice, range, fixes }: BoardProblem,
  path: string,
  layer: BoardLayer,
): ReportedFinding {
  const line = lineOf(layer, range.start.line);
  const described = { id: check.id, level: check.level, message, advice, accepted: null, pack: null };
  const own = fixes.map(({ title, edits }) => ({
    title,
    edits: edits.map((edit) => reportedEdit(path, edit)),
  }));
  return { ...described, range, line, related: [], fixes: own };
}

function reportedFinding(
  finding: Finding,
  path: string,
  layer: BoardLayer,
  words: BoardWords,
): ReportedFinding {
  const { check, level, accepted, pack, place, related } = finding;
  const range = rangeInText(layer, rangeOf(place));
  return {
    id: check.id,
    level,
    message: words.message(finding),
    advice: words.advice(finding),
    accepted,
    pack,
    range,
    line: lineOf(layer, range.start.line),
    related: related.map((one) => ({
      path,
      range: rangeInText(layer, rangeOf(one.place)),
      message: words.related(one),
    })),
    // Only the report for programs asks for them. What the board has no words for is not offered.
    get fixes() {
      return finding.fixes.flatMap((fix) => {
        const own = boardAnswers().boardFix(layer, words, fix, editsOf(fix));
        return own === null
          ? []
          : [{ title: own.title, edits: own.edits.map((edit) => reportedEdit(path, edit)) }];
      });
    },
  };
}

function lineOf(layer: BoardLayer, number: number): string {
  return layer.texts[number] ?? '';
}

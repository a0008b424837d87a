import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import { type AdditionProblem, adviceFor, messageFor } from '../../additions/problem';
import type { AdditionFiles } from '../../workspace/addition-files';
import { shownPath } from '../files/script-paths';
import { type CheckedFile, nothingWithheld, type ReportedFinding } from './checked-file';

/** The files that add to the catalogue, with what is wrong with each. */
export function checkedAdditions(additions: AdditionFiles): readonly CheckedFile[] {
  return [...additions.problems].map(([file, problems]) => {
    const document = TextDocument.create(file, 'json', 0, additions.textOf(file));
    const findings = problems.map((problem) => reportedProblem(document, problem));
    const count = (level: ReportedFinding['level']) => findings.filter((one) => one.level === level).length;
    return {
      path: shownPath(URI.parse(file).fsPath),
      isAddition: true,
      readAs: null,
      findings,
      omitted: 0,
      counts: { 'must-fix': count('must-fix'), risk: count('risk'), note: 0, tidy: 0 },
      ...nothingWithheld,
    };
  });
}

function reportedProblem(document: TextDocument, problem: AdditionProblem): ReportedFinding {
  const start = document.positionAt(problem.start);
  const line = document.getText({
    start: { line: start.line, character: 0 },
    end: { line: start.line + 1, character: 0 },
  });
  return {
    id: problem.id,
    level: problem.id === 'addition/never' ? 'risk' : 'must-fix',
    message: messageFor(problem),
    advice: adviceFor(problem),
    accepted: null,
    pack: null,
    range: { start, end: document.positionAt(problem.end) },
    line: line.replace(/(?:\r\n|\n|\r)$/, ''),
    related: [],
    fixes: [],
  };
}

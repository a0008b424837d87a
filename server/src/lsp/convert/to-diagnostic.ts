import type { Diagnostic } from 'vscode-languageserver';
import type { Check, Level } from '../../catalog/model/check';
import type { Finding } from '../../checks/report/finding';
import { levels } from '../../checks/report/order';
import { isOfIncluded } from '../../checks/report/place';
import { boardAnswers } from '../../features/board/answers';
import { adviceIn, messageIn, relatedIn } from '../../features/board/finding-words';
import type { BoardProblem } from '../../features/board/problems';
import type { BoardWords } from '../../features/board/words/board-words';
import { rangeOf } from '../../features/range';
import type { BoardDocument } from '../documents/board-documents';
import { longDiagnostic } from '../documents/long-documents';
import { DiagnosticSeverity, DiagnosticTag } from '../library';
import type { Session } from '../session';
import { foundByIncluders } from './found-by-includers';

const severities: Readonly<Record<Level, DiagnosticSeverity>> = {
  'must-fix': DiagnosticSeverity.Error,
  risk: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
  tidy: DiagnosticSeverity.Hint,
};

/** Findings published for one script: editors stop underlining beyond some hundreds without saying so. */
const mostPublished = 500;

/** What the client is to show for an open document: a script, or a board's text with what its profile says. */
export function diagnosticsFor(session: Session, uri: string): Diagnostic[] {
  const long = session.long.get(uri);
  if (long !== undefined) return [longDiagnostic(long)];
  const findings = session.workspace.findings(uri);
  const board = session.boards.get(uri);
  if (board === undefined) return diagnosticsFrom(session, findings);
  const { boardTextReport, boardWords } = boardAnswers();
  const { catalog } = session.workspace;
  const words = boardWords(board.layer, catalog);
  const found = boardTextReport(board.layer, findings, catalog);
  return [
    ...found.problems.slice(0, mostPublished).map((problem) => boardDiagnostic(session, board, problem)),
    ...diagnosticsOf(found.findings, (finding) => diagnosticOf(session, finding)),
    ...includersDiagnostics(session, uri, found.findings, words),
  ];
}

/** What the client is to show for a craft script in which this was found. */
export function diagnosticsFrom(session: Session, findings: readonly Finding[]): Diagnostic[] {
  return diagnosticsOf(findings, (finding) => shownDiagnostic(session, finding));
}

/** What crafts find in a board's text that they include, where it stands; what it says alone is said once. */
function includersDiagnostics(
  session: Session,
  uri: string,
  own: readonly Finding[],
  words: BoardWords,
): Diagnostic[] {
  const script = session.workspace.get(uri)?.script;
  if (script === undefined) return [];
  return foundByIncluders(session, uri, own).map(({ finding, place, craft }) => ({
    range: session.clientRange(script, place),
    severity: severities[finding.level],
    ...codeOf(session, finding.check),
    source: 'propsoff',
    message: `${textOf(finding, words.message(finding), () => words.advice(finding))}\nFound in ${craft}, which includes this text.`,
  }));
}

function boardDiagnostic(
  session: Session,
  board: BoardDocument,
  { check, message, advice, range }: BoardProblem,
): Diagnostic {
  return {
    range: session.clientBoardRange(board, range),
    severity: severities[check.level],
    ...codeOf(session, check),
    source: 'propsoff',
    message: `${message}\n${advice}`,
  };
}

/** What the client is to show for a script: the worst findings, and how many were left out. */
function diagnosticsOf(
  findings: readonly Finding[],
  diagnostic: (finding: Finding) => Diagnostic,
): Diagnostic[] {
  if (findings.length <= mostPublished) return findings.map(diagnostic);
  return [leftOut(findings.length - mostPublished), ...worstOf(findings).map(diagnostic)];
}

/** The worst, and among equally bad ones the first. */
function worstOf(findings: readonly Finding[]): readonly Finding[] {
  const byLevel: Record<Level, Finding[]> = { 'must-fix': [], risk: [], note: [], tidy: [] };
  for (const finding of findings) byLevel[finding.level].push(finding);
  const worst: Finding[] = [];
  return worst.concat(...levels.map((level) => byLevel[level])).slice(0, mostPublished);
}

function leftOut(count: number): Diagnostic {
  return {
    range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } },
    severity: DiagnosticSeverity.Information,
    source: 'propsoff',
    message: `${count} more findings are not shown here. The command line counts them all.`,
  };
}

/** The same as `diagnosticOf`, kept from one edit to the next. */
function shownDiagnostic(session: Session, finding: Finding): Diagnostic {
  // What it relates to may have moved without it.
  if (finding.related.length > 0) return diagnosticOf(session, finding);
  const range = () => session.clientRange(finding.place.script, rangeOf(finding.place));
  return session.published.of(finding, range, () => diagnosticOf(session, finding));
}

function diagnosticOf(session: Session, finding: Finding): Diagnostic {
  const { workspace } = session;
  const { place, check, level, related } = finding;
  const diagnostic: Diagnostic = {
    range: session.clientRange(place.script, rangeOf(place)),
    severity: severities[level],
    ...codeOf(session, check),
    source: 'propsoff',
    message: textOf(finding, messageIn(workspace, finding), () => adviceIn(workspace, finding)),
  };
  if (session.client.greysFindings && doesNothing(finding)) diagnostic.tags = [DiagnosticTag.Unnecessary];
  if (session.client.relatedFindings && related.length > 0) {
    diagnostic.relatedInformation = related.map((one) => {
      const { script } = one.place;
      const location = {
        uri: session.clientUri(script.uri),
        range: session.clientRange(script, rangeOf(one.place)),
      };
      return { location, message: relatedIn(workspace, one) };
    });
  }
  return diagnostic;
}

/** A check's id, with where its story can be read if the client can go there. */
function codeOf(
  { stories, workspace }: Session,
  { id }: Check,
): Pick<Diagnostic, 'code' | 'codeDescription'> {
  const href = stories.of(id, workspace.catalog);
  return href === null ? { code: id } : { code: id, codeDescription: { href } };
}

/** What an include brings in may do nothing: the include itself does something. */
function doesNothing(finding: Finding): boolean {
  return finding.check.doesNothing === true && !isOfIncluded(finding);
}

/** The sentence that says what is wrong; then, unless it is accepted, the one that says what to do. */
function textOf({ accepted }: Finding, message: string, advice: () => string): string {
  return accepted === null ? `${message}\n${advice()}` : `Accepted (${accepted}): ${message}`;
}

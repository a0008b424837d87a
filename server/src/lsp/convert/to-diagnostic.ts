import type { Diagnostic } from 'vscode-languageserver';
import type { Level } from '../../catalog/model/check';
import type { Finding, Place } from '../../checks/report/finding';
import { levels } from '../../checks/report/order';
import { adviceOf, messageOf } from '../../checks/report/render';
import { fileName } from '../../craft/include-path';
import { boardAnswers } from '../../features/board/answers';
import type { BoardProblem } from '../../features/board/problems';
import type { BoardWords } from '../../features/board/words/board-words';
import { rangeOf } from '../../features/range';
import type { BoardDocument } from '../documents/board-documents';
import { longDiagnostic } from '../documents/long-documents';
import { DiagnosticSeverity } from '../library';
import type { Session } from '../session';

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
  if (board === undefined) return diagnosticsOf(findings, (finding) => shownDiagnostic(session, finding));
  const { boardTextReport, boardWords } = boardAnswers();
  const { catalog } = session.workspace;
  const words = boardWords(board.layer, catalog);
  const found = boardTextReport(board.layer, findings, catalog);
  return [
    ...found.problems.slice(0, mostPublished).map((problem) => boardDiagnostic(session, board, problem)),
    ...diagnosticsOf(found.findings, (finding) => diagnosticOf(session, finding, words)),
    ...includersDiagnostics(session, uri, found.findings, words),
  ];
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
  const isOwn = ({ check }: Finding, { line, start }: Place) =>
    own.some((one) => one.check === check && one.place.line === line && one.place.start === start);
  return session.workspace.includersOf(uri).flatMap(({ uri: root, craft }) => {
    return session.workspace.findings(root).flatMap((finding) => {
      const [first] = finding.related;
      const isHere = first?.place.script === script && finding.place.line.statement.kind === 'include';
      // What must be mended in this text is told at its own lines.
      if (finding.check.id === 'line/include-faulty') return [];
      if (!isHere || isOwn(finding, first.place)) return [];
      const range = session.clientRange(script, rangeOf(first.place));
      const message = `${textOf(finding, words)}\nFound in ${fileName(craft.root.uri)}, which includes this text.`;
      return [
        { range, severity: severities[finding.level], code: finding.check.id, source: 'propsoff', message },
      ];
    });
  });
}

function boardDiagnostic(
  session: Session,
  board: BoardDocument,
  { check, message, advice, range }: BoardProblem,
): Diagnostic {
  return {
    range: session.clientBoardRange(board, range),
    severity: severities[check.level],
    code: check.id,
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

/** `words`: those of the board in whose text it stands; null in a script. */
function diagnosticOf(session: Session, finding: Finding, words: BoardWords | null = null): Diagnostic {
  const { place, check, level, related } = finding;
  const diagnostic: Diagnostic = {
    range: session.clientRange(place.script, rangeOf(place)),
    severity: severities[level],
    code: check.id,
    source: 'propsoff',
    message: textOf(finding, words),
  };
  if (session.client.relatedFindings && related.length > 0) {
    diagnostic.relatedInformation = related.map((one) => {
      const { script } = one.place;
      const location = {
        uri: session.clientUri(script.uri),
        range: session.clientRange(script, rangeOf(one.place)),
      };
      return { location, message: words?.related(one) ?? one.message };
    });
  }
  return diagnostic;
}

/** The sentence that says what is wrong; then, unless it is accepted, the one that says what to do. */
function textOf(finding: Finding, words: BoardWords | null): string {
  const message = words?.message(finding) ?? messageOf(finding);
  if (finding.accepted !== null) return `Accepted (${finding.accepted}): ${message}`;
  return `${message}\n${words?.advice(finding) ?? adviceOf(finding)}`;
}

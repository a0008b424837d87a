import type {
  CodeAction as ClientAction,
  Range as ClientRange,
  CodeActionParams,
  Diagnostic,
  ServerCapabilities,
} from 'vscode-languageserver';
import type { BoardLayer } from '../../board/layer/layer';
import { boardAnswers } from '../../features/board/answers';
import { type CodeAction, codeActions, isShownAs } from '../../features/code-actions';
import { fixAll } from '../../features/fix-edits';
import type { Range, TextEdit } from '../../features/range';
import type { ClientAbilities } from '../client-abilities';
import { canBeEdited, workspaceEdit } from '../convert/workspace-edit';
import { CodeActionKind } from '../library';
import type { BoardContext, Context } from './row';

const fixAllKind = `${CodeActionKind.SourceFixAll}.propsoff`;

/** Without literals a client takes only commands, which could do nothing that the edits don't. */
export function codeActionCapability({ codeActions }: ClientAbilities): ServerCapabilities | null {
  if (!codeActions) return null;
  return { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind] } };
}

export function scriptActions(
  context: Context,
  { range, context: { only, diagnostics } }: CodeActionParams,
): ClientAction[] {
  return [
    ...(isWanted(CodeActionKind.QuickFix, only ?? [CodeActionKind.QuickFix])
      ? quickFixes(context, context.session.range(context.snapshot.script, range), diagnostics)
      : []),
    // Asked for on saving or by name: finding it out costs as much as the script is long.
    ...(isWanted(fixAllKind, only ?? []) ? fixAllAction(context) : []),
  ];
}

export function boardActions(
  context: BoardContext,
  { range, context: { only } }: CodeActionParams,
): ClientAction[] {
  return isWanted(CodeActionKind.QuickFix, only ?? [CodeActionKind.QuickFix])
    ? [...boardFixes(context, range), ...meaningAction(context, range)]
    : [];
}

/** On a setting of which nobody has said what it means: where it is said. */
function meaningAction({ session, snapshot, layer }: BoardContext, { start }: ClientRange): ClientAction[] {
  if (!session.client.own.commands) return [];
  const key = boardAnswers().settingToSay(layer, start.line);
  if (key === null) return [];
  const title = 'Say what this setting means';
  const command = { title, command: 'propsoff.sayMeaning', arguments: [snapshot.uri, key] };
  return [{ title, kind: CodeActionKind.QuickFix, command }];
}

/** Fixes of the engine in the board's spelling, and those of the profile; what the board can't say is not offered. */
function boardFixes(context: BoardContext, clientRange: ClientRange): ClientAction[] {
  const { session, snapshot, board, layer } = context;
  const { catalog } = snapshot;
  const { boardFix, boardProblems, boardWords } = boardAnswers();
  const words = boardWords(layer, catalog);
  const edit = (edits: readonly TextEdit[]) => ({
    changes: {
      [snapshot.uri]: edits.map(({ range, newText }) => ({
        range: session.clientBoardRange(board, range),
        newText,
      })),
    },
  });
  const lines = { first: clientRange.start.line, last: clientRange.end.line };
  const own = boardProblems(layer, catalog)
    .filter(({ range }) => range.start.line >= lines.first && range.start.line <= lines.last)
    .flatMap(({ fixes }) => fixes);
  const engine = codeActions(snapshot, session.range(snapshot.script, clientRange)).flatMap((action) => {
    if (action.kind === 'accept') return acceptanceIn(layer, action);
    if (action.edits.some(({ uri }) => uri !== snapshot.script.uri)) return [];
    return boardFix(layer, words, action.title, action.edits) ?? [];
  });
  return [...own, ...engine].map(({ title, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    edit: edit(edits),
  }));
}

/** In a comment of the board; none where it knows no comments. */
function acceptanceIn(layer: BoardLayer, { title, edits }: CodeAction) {
  const [first] = edits.flatMap((file) => file.edits);
  if (first === undefined) return [];
  const edit = boardAnswers().boardAcceptance(layer, first.range.start.line, first.newText);
  return edit === null ? [] : [{ title, edits: [edit] }];
}

/** Kinds are paths: whoever asks for `source` wants `source.fixAll` too. */
function isWanted(kind: string, only: readonly string[]): boolean {
  return only.some((wanted) => wanted === kind || kind.startsWith(`${wanted}.`));
}

function quickFixes(context: Context, range: Range, diagnostics: readonly Diagnostic[]): ClientAction[] {
  const { session, snapshot } = context;
  const shown = diagnostics.map((diagnostic) => ({
    diagnostic,
    problem: { id: String(diagnostic.code ?? ''), range: session.range(snapshot.script, diagnostic.range) },
  }));
  const own = shown.filter(({ diagnostic: { source } }) => source === 'propsoff');
  const actions = codeActions(
    snapshot,
    range,
    own.map(({ problem }) => problem),
  );
  const possible = actions.filter(({ edits }) => canBeEdited(session, edits));
  return possible.map(({ title, findings, isPreferred, edits, placeholder }) => {
    const about = own.filter(({ problem }) => findings.some((finding) => isShownAs(finding, problem)));
    return {
      title,
      kind: CodeActionKind.QuickFix,
      isPreferred,
      diagnostics: about.map(({ diagnostic }) => diagnostic),
      edit: workspaceEdit(session, edits, placeholder),
    };
  });
}

function fixAllAction({ session, snapshot }: Context): ClientAction[] {
  const edits = fixAll(snapshot);
  if (edits.length === 0) return [];
  const edit = workspaceEdit(session, [{ uri: snapshot.script.uri, edits }]);
  return [{ title: 'Fix all that has one fix', kind: fixAllKind, edit }];
}

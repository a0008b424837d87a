import type {
  CodeAction as ClientAction,
  Range as ClientRange,
  CodeActionParams,
  Diagnostic,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { fileName } from '../../craft/include-path';
import { type CodeAction, codeActions, isShownAs } from '../../features/code-actions';
import { fixAll } from '../../features/fix-edits';
import type { Range } from '../../features/range';
import { refactorsAt } from '../../features/refactors/refactors';
import { canBeEdited, workspaceEdit } from '../convert/workspace-edit';
import { CodeActionKind, CodeActionTriggerKind, LSPErrorCodes, ResponseError } from '../library';
import type { Session } from '../session';
import type { ScriptContext } from './about-script';
import { isWanted } from './action-kind';
import { doneInBoardText } from './board-actions';
import { fixAllKind, refactorKinds } from './capabilities';
import { about, count, list, object, range as rangeForm, text } from './form';
import type { Services } from './row';

/** An action whose edits are made when somebody wants them. */
interface LateAction extends Omit<ClientAction, 'edit'> {
  readonly edit?: () => WorkspaceEdit;
}

/** All that is needed to find an action again whose edits are asked for. */
interface ActionData {
  readonly textDocument: { readonly uri: string };
  readonly version: number;
  readonly range: ClientRange;
  readonly only: readonly string[];
  /** The problems that were asked about, of those of ours. */
  readonly shown: readonly ShownDiagnostic[];
  /** Which of the actions it was. */
  readonly index: number;
}

interface ShownDiagnostic {
  readonly code: string;
  readonly range: ClientRange;
}

const dataForm = object<ActionData>({
  ...about,
  version: count,
  range: rangeForm,
  only: list(text),
  shown: list(object<ShownDiagnostic>({ code: text, range: rangeForm })),
  index: count,
});

function isActionData(data: unknown): data is ActionData {
  return dataForm(data, 'data') === null;
}

export function scriptActions(context: ScriptContext, params: CodeActionParams): ClientAction[] {
  const { range, context: asked } = params;
  const own = asked.diagnostics.filter(({ source }) => source === 'propsoff');
  const isAutomatic = asked.triggerKind === CodeActionTriggerKind.Automatic;
  const only = asked.only ?? [CodeActionKind.QuickFix, ...(isAutomatic ? [] : [CodeActionKind.Refactor])];
  const actions = actionsFor(context, range, only, own);
  const { session, snapshot } = context;
  const version = session.workspace.get(snapshot.uri)?.version ?? 0;
  if (!session.client.resolvesActions) return actions.map((action) => withEdit(action, undefined));
  const shown = own.map(({ code, range: at }) => ({ code: String(code ?? ''), range: at }));
  const data = { textDocument: { uri: snapshot.uri }, version, range, only, shown };
  return actions.map(({ edit, ...action }, index) =>
    edit === undefined ? action : { ...action, data: { ...data, index } satisfies ActionData },
  );
}

/** The same action with its edits, for the text that it was offered for. */
export function resolvedAction(
  { session }: Services,
  action: ClientAction,
): ClientAction | ResponseError<void> {
  const { data } = action;
  // What came with its edits, or with a command, is whole.
  if (!isActionData(data)) return action;
  const { textDocument, version, range, only, shown, index } = data;
  const snapshot = session.snapshot(textDocument.uri);
  const isSame = session.workspace.get(textDocument.uri)?.version === version;
  const own = shown.map((one): Diagnostic => ({ ...one, source: 'propsoff', message: '' }));
  const found = snapshot && isSame ? actionsFor({ session, snapshot }, range, only, own)[index] : undefined;
  if (found?.title !== action.title)
    return new ResponseError(LSPErrorCodes.ContentModified, 'The script has changed since this was offered.');
  return withEdit(found, action);
}

function withEdit({ edit, ...action }: LateAction, asOffered: ClientAction | undefined): ClientAction {
  return edit === undefined ? action : { ...(asOffered ?? action), edit: edit() };
}

function actionsFor(
  context: ScriptContext,
  clientRange: ClientRange,
  only: readonly string[],
  own: readonly Diagnostic[],
): readonly LateAction[] {
  const range = context.session.range(context.snapshot.script, clientRange);
  return [
    ...(isWanted(CodeActionKind.QuickFix, only) ? quickFixes(context, range, own) : []),
    ...refactors(context, range, only),
    // Asked for on saving or by name: finding it out costs as much as the script is long.
    ...(isWanted(fixAllKind, only) ? fixAllAction(context) : []),
  ];
}

function quickFixes(context: ScriptContext, range: Range, own: readonly Diagnostic[]): readonly LateAction[] {
  const { session, snapshot } = context;
  const shown = own.map((diagnostic) => ({
    diagnostic,
    problem: { id: String(diagnostic.code ?? ''), range: session.range(snapshot.script, diagnostic.range) },
  }));
  const actions = codeActions(
    snapshot,
    range,
    shown.map(({ problem }) => problem),
  );
  return actions.flatMap((action) => {
    const done = doneBy(session, action);
    if (done === null) return [];
    const { findings, isPreferred } = action;
    const answered = shown.filter(({ problem }) => findings.some((finding) => isShownAs(finding, problem)));
    const kind = CodeActionKind.QuickFix;
    return [{ ...done, kind, isPreferred, diagnostics: answered.map(({ diagnostic }) => diagnostic) }];
  });
}

/** In the board's text that the script includes, its own words and means count. */
function doneBy(session: Session, action: CodeAction): LateAction | null {
  const { title, edits } = action;
  const [file, ...others] = edits;
  const board = file === undefined || others.length > 0 ? undefined : session.boards.get(file.uri);
  if (file !== undefined && board !== undefined) {
    const done = doneInBoardText(session, file.uri, board, action);
    if (done === null) return null;
    const { edit, ...rest } = done;
    // Beside it stands the same for this script.
    const where = action.kind === 'accept' ? '' : `, in ${fileName(file.uri)}`;
    const named = { ...rest, title: `${done.title}${where}` };
    return edit === undefined ? named : { ...named, edit: () => edit };
  }
  return canBeEdited(session, edits) ? { title, edit: () => workspaceEdit(session, edits) } : null;
}

function refactors(
  { session, snapshot }: ScriptContext,
  range: Range,
  only: readonly string[],
): readonly LateAction[] {
  if (!Object.values(refactorKinds).some((kind) => isWanted(kind, only))) return [];
  return refactorsAt(snapshot, range)
    .map(({ title, kind, edits }) => ({
      title,
      kind: refactorKinds[kind],
      edit: () => workspaceEdit(session, edits()),
    }))
    .filter(({ kind }) => isWanted(kind, only));
}

function fixAllAction({ session, snapshot }: ScriptContext): readonly LateAction[] {
  const edits = fixAll(snapshot);
  if (edits.length === 0) return [];
  const file = { uri: snapshot.script.uri, edits };
  return [
    { title: 'Fix all that has one fix', kind: fixAllKind, edit: () => workspaceEdit(session, [file]) },
  ];
}

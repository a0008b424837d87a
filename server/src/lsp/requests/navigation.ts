import type {
  CancellationToken,
  DefinitionParams,
  DocumentHighlight,
  DocumentHighlightParams,
  DocumentLink,
  Location,
  LocationLink,
  PrepareRenameParams,
  PrepareRenameResult,
  ReferenceParams,
  RenameParams,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { type DefinitionTarget, definition } from '../../features/navigation/definition';
import { documentLinks } from '../../features/navigation/document-links';
import { highlights } from '../../features/navigation/highlights';
import { references } from '../../features/navigation/references';
import { prepareRename, rename } from '../../features/navigation/rename';
import { workspaceEdit } from '../convert/workspace-edit';
import { DocumentHighlightKind, LSPErrorCodes, ResponseError } from '../library';
import type { Session } from '../session';
import { type AcrossContext, contextAcross, type ScriptContext } from './about-script';
import type { Services } from './row';

export function definitionAt(
  { session, snapshot }: ScriptContext,
  { position }: DefinitionParams,
): Location[] | LocationLink[] | null {
  const at = session.position(snapshot.script, position);
  const found = definition(snapshot, at, session.openCrafts());
  if (found === null) return null;
  if (!session.client.definitionLinks) return found.targets.map((target) => locationOf(session, target));
  const originSelectionRange = session.clientRange(snapshot.script, found.origin);
  return found.targets.map((target) => ({ originSelectionRange, ...linkTo(session, target) }));
}

function locationOf(session: Session, { uri, selection }: DefinitionTarget): Location {
  return session.clientLocation({ uri, range: selection });
}

function linkTo(session: Session, { uri, range, selection }: DefinitionTarget): LocationLink {
  return {
    targetUri: session.clientUri(uri),
    targetRange: session.clientLocation({ uri, range }).range,
    targetSelectionRange: session.clientLocation({ uri, range: selection }).range,
  };
}

export function referencesTo(
  { session, snapshot, crafts }: AcrossContext,
  { position, context }: ReferenceParams,
): Location[] {
  const options = { withDefinitions: context.includeDeclaration, others: crafts };
  const found = references(snapshot, session.position(snapshot.script, position), options);
  return found.map((location) => session.clientLocation(location));
}

export function highlightsOf(
  { session, snapshot }: ScriptContext,
  { position }: DocumentHighlightParams,
): DocumentHighlight[] {
  const found = highlights(snapshot, session.position(snapshot.script, position));
  return found.map(({ range, kind }) => ({
    range: session.clientRange(snapshot.script, range),
    kind: kind === 'write' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}

export function linksIn({ session, snapshot }: ScriptContext): DocumentLink[] {
  const { linkTooltips: hasTooltips } = session.client;
  return documentLinks(snapshot).map(({ range, target, tooltip }) => ({
    range: session.clientRange(snapshot.script, range),
    target: session.clientUri(target),
    ...(hasTooltips ? { tooltip } : {}),
  }));
}

export function renameableAt(
  { session, snapshot }: ScriptContext,
  { position }: PrepareRenameParams,
): PrepareRenameResult | ResponseError<void> {
  const answer = prepareRename(snapshot, session.position(snapshot.script, position));
  if ('refused' in answer) return refusal(answer.refused);
  return { range: session.clientRange(snapshot.script, answer.range), placeholder: answer.placeholder };
}

/** A file that changes on the disk again and again meanwhile is not waited for. */
const mostTries = 3;

/**
 * The edits of all scripts in which something is named. What is not open is looked at on the disk once more: an edit
 * has no version there, and would be made in whatever the file holds by then.
 */
export async function renamed(
  services: Services,
  params: RenameParams,
  token: CancellationToken,
): Promise<WorkspaceEdit | ResponseError<void> | null> {
  const { closed } = services.session.workspace;
  for (let tries = 0; tries < mostTries; tries += 1) {
    const context = await contextAcross(services, params, token);
    if (context === null || context instanceof ResponseError) return context;
    const { session, snapshot, crafts } = context;
    const answer = rename(
      snapshot,
      session.position(snapshot.script, params.position),
      params.newName,
      crafts,
    );
    if ('refused' in answer) return refusal(answer.refused);
    const edit = workspaceEdit(session, answer.files);
    if (!(await closed.areOutdated(answer.files.map(({ uri }) => uri)))) return edit;
  }
  return refusal('Nothing was renamed: scripts keep changing on the disk.');
}

/** Clients show the sentence to the pilot. */
function refusal(sentence: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, sentence);
}

import type {
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
  ServerCapabilities,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { type DefinitionTarget, definition } from '../../features/navigation/definition';
import { documentLinks } from '../../features/navigation/document-links';
import { highlights } from '../../features/navigation/highlights';
import { references } from '../../features/navigation/references';
import { prepareRename, rename } from '../../features/navigation/rename';
import type { ClientAbilities } from '../client-abilities';
import { workspaceEdit } from '../convert/workspace-edit';
import { DocumentHighlightKind, LSPErrorCodes, ResponseError } from '../library';
import type { Session } from '../session';
import type { Context } from './row';

export function definitionAt(
  { session, snapshot }: Context,
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
  { session, snapshot }: Context,
  { position, context }: ReferenceParams,
): Location[] {
  const options = { withDefinitions: context.includeDeclaration, open: session.openCrafts() };
  const found = references(snapshot, session.position(snapshot.script, position), options);
  return found.map((location) => session.clientLocation(location));
}

export function highlightsOf(
  { session, snapshot }: Context,
  { position }: DocumentHighlightParams,
): DocumentHighlight[] {
  const found = highlights(snapshot, session.position(snapshot.script, position));
  return found.map(({ range, kind }) => ({
    range: session.clientRange(snapshot.script, range),
    kind: kind === 'write' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}

export function linksIn({ session, snapshot }: Context): DocumentLink[] {
  const { linkTooltips: hasTooltips } = session.client;
  return documentLinks(snapshot).map(({ range, target, tooltip }) => ({
    range: session.clientRange(snapshot.script, range),
    target: session.clientUri(target),
    ...(hasTooltips ? { tooltip } : {}),
  }));
}

export function renameCapability({ asksBeforeRename }: ClientAbilities): ServerCapabilities {
  return { renameProvider: asksBeforeRename ? { prepareProvider: true } : true };
}

export function renameableAt(
  { session, snapshot }: Context,
  { position }: PrepareRenameParams,
): PrepareRenameResult | ResponseError<void> {
  const answer = prepareRename(snapshot, session.position(snapshot.script, position));
  if ('refused' in answer) return refusal(answer.refused);
  return { range: session.clientRange(snapshot.script, answer.range), placeholder: answer.placeholder };
}

export function renamed(
  { session, snapshot }: Context,
  { position, newName }: RenameParams,
): WorkspaceEdit | ResponseError<void> {
  const at = session.position(snapshot.script, position);
  const answer = rename(snapshot, at, newName, session.openCrafts());
  return 'refused' in answer ? refusal(answer.refused) : workspaceEdit(session, answer.files);
}

/** Clients show the sentence to the pilot. */
function refusal(sentence: string): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestFailed, sentence);
}

import type { Connection, ServerCapabilities } from 'vscode-languageserver';
import * as board from '../board-protocol';
import { diagnosticCapability } from '../documents/diagnostics';
import {
  CodeActionRequest,
  CodeLensRequest,
  CompletionRequest,
  CompletionResolveRequest,
  DefinitionRequest,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidChangeWorkspaceFoldersNotification,
  DidCloseTextDocumentNotification,
  DidDeleteFilesNotification,
  DidOpenTextDocumentNotification,
  DidRenameFilesNotification,
  DocumentDiagnosticRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  InitializedNotification,
  InlayHintRequest,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  WorkspaceSymbolRequest,
} from '../library';
import type { OwnRequest } from '../own-message';
import * as own from '../protocol';
import { boardActions, codeActionCapability, scriptActions } from './code-action';
import { boardTextCompletion, resolvedItem, scriptCompletion } from './completion';
import {
  about,
  type Form,
  flag,
  here,
  leftOutOr,
  list,
  object,
  optional,
  position,
  range,
  text,
  within,
} from './form';
import { formatted, formattedRange } from './formatting';
import { hintsIn, lensesOf } from './hints';
import { boardHoverAt, hoverAt, hoverElsewhere } from './hover';
import {
  definitionAt,
  highlightsOf,
  linksIn,
  referencesTo,
  renameableAt,
  renameCapability,
  renamed,
} from './navigation';
import { boardTextFolding, scriptFolding, selectionsAt } from './ranges';
import {
  type Answer,
  aboutAnyText,
  aboutScript,
  aboutScriptOnBoard,
  aboutWholeScript,
  aboutWholeText,
  notification,
  ownNotification,
  ownRequest,
  type Row,
  request,
  type Served,
  stopIfCancelled,
} from './row';
import { tokensIn, tokensLegend, tokensOf } from './semantic-tokens';
import { explanationAt, setAt, summaryOf } from './summary';
import { boardSymbols, scriptSymbols, symbolsEverywhere } from './symbols';

const aText = object(about);
const aPlace = object(here);
const aRange = object(within);
const files = list(object({ uri: text }));

/** Every request and notification that the server takes, a row each. */
const rows: readonly Row[] = [
  notification(InitializedNotification.type, object({}), ({ folders }) => folders.initialized()),
  notification(
    DidChangeWorkspaceFoldersNotification.type,
    object({ event: object({ added: files, removed: files }) }),
    ({ folders }, { event }) => folders.changed(event),
  ),
  notification(
    DidOpenTextDocumentNotification.type,
    object({ textDocument: object({ uri: text, text }) }),
    ({ documents }, { textDocument }) => documents.open(textDocument),
  ),
  notification(
    DidChangeTextDocumentNotification.type,
    object({ ...about, contentChanges: list(object({ text, range: leftOutOr(range) })) }),
    ({ documents }, { textDocument, contentChanges }) => documents.change(textDocument, contentChanges),
  ),
  notification(DidCloseTextDocumentNotification.type, aText, ({ documents }, { textDocument }) =>
    documents.close(textDocument.uri),
  ),
  notification(
    DidChangeWatchedFilesNotification.type,
    object({ changes: files }),
    ({ documents }, { changes }) => documents.diskChanged(changes.map(({ uri }) => uri)),
  ),
  notification(DidDeleteFilesNotification.type, object({ files }), ({ documents }, deleted) =>
    documents.diskChanged(deleted.files.map(({ uri }) => uri)),
  ),
  notification(
    DidRenameFilesNotification.type,
    object({ files: list(object({ oldUri: text, newUri: text })) }),
    ({ documents }, renames) =>
      documents.diskChanged(renames.files.flatMap(({ oldUri, newUri }) => [oldUri, newUri])),
  ),
  ownNotification(board.boardOfNotification, ({ documents }, { uri, board }) =>
    documents.pickBoard(uri, board),
  ),
  ownNotification(own.packInViewNotification, ({ documents }, { uri, pack }) =>
    documents.pickPack(uri, pack),
  ),

  request(
    DocumentDiagnosticRequest.type,
    aText,
    ({ diagnostics }, { textDocument, previousResultId }) =>
      diagnostics.report(textDocument.uri, previousResultId),
    diagnosticCapability,
  ),
  request(HoverRequest.type, aPlace, aboutScript(hoverAt, boardHoverAt), { hoverProvider: true }),
  request(CompletionRequest.type, aPlace, aboutScript(scriptCompletion, boardTextCompletion), {
    completionProvider: { triggerCharacters: ['.', '[', '=', '@', ' '], resolveProvider: true },
  }),
  request(CompletionResolveRequest.type, object({}), resolvedItem),
  request(InlayHintRequest.type, aRange, aboutAnyText(hintsIn), { inlayHintProvider: true }),
  request(CodeLensRequest.type, aText, aboutScript(lensesOf), { codeLensProvider: {} }),
  request(
    CodeActionRequest.type,
    object({ ...within, context: object({ only: optional(list(text)) }) }),
    aboutScript(scriptActions, boardActions),
    codeActionCapability,
  ),
  request(DocumentFormattingRequest.type, aText, aboutScript(formatted), {
    documentFormattingProvider: true,
  }),
  request(DocumentRangeFormattingRequest.type, aRange, aboutScript(formattedRange), {
    documentRangeFormattingProvider: true,
  }),
  request(PrepareRenameRequest.type, aPlace, aboutScript(renameableAt)),
  request(RenameRequest.type, object({ ...here, newName: text }), aboutScript(renamed), renameCapability),
  request(DefinitionRequest.type, aPlace, aboutScript(definitionAt), { definitionProvider: true }),
  request(
    ReferencesRequest.type,
    object({ ...here, context: object({ includeDeclaration: flag }) }),
    aboutScript(referencesTo),
    { referencesProvider: true },
  ),
  request(DocumentHighlightRequest.type, aPlace, aboutScript(highlightsOf), {
    documentHighlightProvider: true,
  }),
  request(DocumentLinkRequest.type, aText, aboutScript(linksIn), { documentLinkProvider: {} }),
  request(DocumentSymbolRequest.type, aText, aboutScript(scriptSymbols, boardSymbols), {
    documentSymbolProvider: true,
  }),
  request(WorkspaceSymbolRequest.type, object({ query: text }), symbolsEverywhere, {
    workspaceSymbolProvider: true,
  }),
  request(FoldingRangeRequest.type, aText, aboutScript(scriptFolding, boardTextFolding), {
    foldingRangeProvider: true,
  }),
  request(
    SelectionRangeRequest.type,
    object({ ...about, positions: list(position) }),
    aboutScript(selectionsAt),
    { selectionRangeProvider: true },
  ),
  request(SemanticTokensRequest.type, aText, aboutScript(tokensOf), {
    semanticTokensProvider: { legend: tokensLegend, full: true, range: true },
  }),
  request(SemanticTokensRangeRequest.type, aRange, aboutScript(tokensIn)),

  ownRequest(own.summaryRequest, aboutAnyText(summaryOf)),
  ownRequest(own.setHereRequest, aboutAnyText(setAt)),
  ownRequest(own.explainRequest, aboutAnyText(explanationAt)),
  ownRequest(own.hoverElsewhereRequest, hoverElsewhere),
  onDemand(own.sheetRequest, ({ sheetOf }) => aboutAnyText(sheetOf)),
  onDemand(own.tryableRequest, ({ tryableAt }) => aboutScript(tryableAt)),
  onDemand(own.tryRequest, ({ tried }) => aboutScript(tried)),
  onDemand(own.compareRequest, ({ comparison }) => comparison),
  onDemand(own.flightFormRequest, ({ flightFormOf }) => aboutScript(flightFormOf)),
  onDemand(own.flightAnswerRequest, ({ flightAnswerFault }) => aboutScript(flightAnswerFault)),
  onDemand(own.noteFlightRequest, ({ noteFlight }) => aboutScript(noteFlight)),
  onDemand(own.benchCardRequest, ({ benchCardOf }) => aboutWholeScript(benchCardOf)),
  onDemand(own.keepReadingsRequest, ({ keepReadings }) => aboutWholeScript(keepReadings)),
  ownRequest(own.writtenRequest, ({ documents }, { uri }) => documents.written(uri)),
  onDemand(board.boardsRequest, ({ boards }) => boards),
  onDemand(board.boardTextRequest, ({ boardTextFor }) => aboutScriptOnBoard(boardTextFor)),
  onDemand(board.readRequest, ({ scriptFromCapture }) => scriptFromCapture),
  onDemand(board.proveRequest, ({ proof }) => aboutScriptOnBoard(proof)),
  onDemand(board.meaningsRequest, ({ boardMeanings }) => boardMeanings),
  onDemand(board.sayMeaningsRequest, ({ meaningsSaid }) => meaningsSaid),
  onDemand(board.choicesRequest, ({ choicesSaid }) => choicesSaid),
  onDemand(board.parameterFormRequest, ({ formOfParameter }) => formOfParameter),
  onDemand(board.sayableRequest, ({ sayable }) => sayable),
  onDemand(board.hardwareRequest, ({ hardwareSaid }) => hardwareSaid),
  onDemand(board.lessonRequest, ({ lessonSaid }) => lessonSaid),
  onDemand(board.newBoardTextRequest, ({ newBoardText }) => newBoardText),
  onDemand(board.teachRequest, ({ taught }) => aboutWholeText(taught)),
];

/** A request that waits for a person to open or start something: what answers it is loaded when it is asked. */
function onDemand<P, R>(
  type: OwnRequest<P, R>,
  pick: (part: typeof import('./on-demand')) => Answer<P, R>,
): Row {
  return ownRequest(type, async (served, params, token) => {
    const answer = pick(await import('./on-demand'));
    stopIfCancelled(token);
    return answer(served, params, token);
  });
}

/** Registers every row that the client can use; gives what the server says that it can do. */
export function register(connection: Connection, served: Served): ServerCapabilities {
  const { client } = served.session;
  const all: ServerCapabilities = {};
  for (const row of rows) {
    const capability = typeof row.capability === 'function' ? row.capability(client) : row.capability;
    if (capability === null) continue;
    Object.assign(all, capability);
    row.register(connection, served);
  }
  return all;
}

/** Of all that the server takes, the rows and what the library takes by itself. */
const forms: ReadonlyMap<string, Form<unknown>> = new Map([
  ...rows.map(({ method, form }): [string, Form<unknown>] => [method, form]),
  ['initialize', object({ capabilities: object({}) })],
  ['$/setTrace', object({ value: text })],
  ['$/progress', object({})],
]);

/** What is wrong with the parameters of a message, as the end of a sentence; null where nothing is. */
export function paramsFault(method: string, params: unknown): string | null {
  return forms.get(method)?.(params, 'params') ?? null;
}

import {
  CodeActionRequest,
  CodeLensRequest,
  CompletionRequest,
  CompletionResolveRequest,
  type Connection,
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
  type ServerCapabilities,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver';
import * as own from '../protocol';
import { boardActions, codeActionCapability, scriptActions } from './code-action';
import { boardTextCompletion, resolvedItem, scriptCompletion } from './completion';
import { type Form, flag, leftOutOr, list, members, object, optional, text } from './form';
import { formatted, formattedRange } from './formatting';
import { hintsIn, lensesOf } from './hints';
import { hoverAt, hoverElsewhere } from './hover';
import { definitionAt, highlightsOf, linksIn, referencesTo, renameableAt, renamed } from './navigation';
import { boardTextFolding, scriptFolding, selectionsAt } from './ranges';
import {
  type Answer,
  aboutAnyText,
  aboutScript,
  aboutWholeScript,
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

const about = { textDocument: members.textDocument };
const here = { ...about, position: members.position };
const stretch = { ...about, range: members.range };
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
    object({ ...about, contentChanges: list(object({ text, range: leftOutOr(members.range) })) }),
    ({ documents }, { textDocument, contentChanges }) => documents.change(textDocument, contentChanges),
  ),
  notification(DidCloseTextDocumentNotification.type, object(about), ({ documents }, { textDocument }) =>
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
  ownNotification(own.boardOfNotification, ({ documents }, { uri, board }) =>
    documents.pickBoard(uri, board),
  ),
  ownNotification(own.packInViewNotification, ({ documents }, { uri, pack }) =>
    documents.pickPack(uri, pack),
  ),

  request(
    DocumentDiagnosticRequest.type,
    object(about),
    ({ diagnostics }, { textDocument, previousResultId }) =>
      diagnostics.report(textDocument.uri, previousResultId),
    ({ textDocument }) =>
      textDocument?.diagnostic === undefined
        ? null
        : {
            diagnosticProvider: {
              identifier: 'propsoff',
              interFileDependencies: true,
              workspaceDiagnostics: false,
            },
          },
  ),
  request(HoverRequest.type, object(here), aboutAnyText(hoverAt), { hoverProvider: true }),
  request(CompletionRequest.type, object(here), aboutScript(scriptCompletion, boardTextCompletion), {
    completionProvider: { triggerCharacters: ['.', '[', '=', '@', ' '], resolveProvider: true },
  }),
  request(CompletionResolveRequest.type, object({}), resolvedItem),
  request(InlayHintRequest.type, object(stretch), aboutAnyText(hintsIn), { inlayHintProvider: true }),
  request(CodeLensRequest.type, object(about), aboutScript(lensesOf), { codeLensProvider: {} }),
  request(
    CodeActionRequest.type,
    object({ ...stretch, context: object({ only: optional(list(text)) }) }),
    aboutScript(scriptActions, boardActions),
    codeActionCapability,
  ),
  request(DocumentFormattingRequest.type, object(about), aboutScript(formatted), {
    documentFormattingProvider: true,
  }),
  request(DocumentRangeFormattingRequest.type, object(stretch), aboutScript(formattedRange), {
    documentRangeFormattingProvider: true,
  }),
  request(PrepareRenameRequest.type, object(here), aboutScript(renameableAt)),
  request(
    RenameRequest.type,
    object({ ...here, newName: text }),
    aboutScript(renamed),
    ({ textDocument }) => ({
      renameProvider: textDocument?.rename?.prepareSupport === true ? { prepareProvider: true } : true,
    }),
  ),
  request(DefinitionRequest.type, object(here), aboutScript(definitionAt), { definitionProvider: true }),
  request(
    ReferencesRequest.type,
    object({ ...here, context: object({ includeDeclaration: flag }) }),
    aboutScript(referencesTo),
    { referencesProvider: true },
  ),
  request(DocumentHighlightRequest.type, object(here), aboutScript(highlightsOf), {
    documentHighlightProvider: true,
  }),
  request(DocumentLinkRequest.type, object(about), aboutScript(linksIn), { documentLinkProvider: {} }),
  request(DocumentSymbolRequest.type, object(about), aboutScript(scriptSymbols, boardSymbols), {
    documentSymbolProvider: true,
  }),
  request(WorkspaceSymbolRequest.type, object({ query: text }), symbolsEverywhere, {
    workspaceSymbolProvider: true,
  }),
  request(FoldingRangeRequest.type, object(about), aboutScript(scriptFolding, boardTextFolding), {
    foldingRangeProvider: true,
  }),
  request(
    SelectionRangeRequest.type,
    object({ ...about, positions: list(members.position) }),
    aboutScript(selectionsAt),
    { selectionRangeProvider: true },
  ),
  request(SemanticTokensRequest.type, object(about), aboutScript(tokensOf), {
    semanticTokensProvider: { legend: tokensLegend, full: true, range: true },
  }),
  request(SemanticTokensRangeRequest.type, object(stretch), aboutScript(tokensIn)),

  ownRequest(own.summaryRequest, aboutAnyText(summaryOf)),
  ownRequest(own.setHereRequest, aboutAnyText(setAt)),
  ownRequest(own.explainRequest, aboutAnyText(explanationAt)),
  ownRequest(own.hoverElsewhereRequest, hoverElsewhere),
  ownRequest(
    own.sheetRequest,
    later(({ sheetOf }) => aboutAnyText(sheetOf)),
  ),
  ownRequest(
    own.tryableRequest,
    later(({ tryableAt }) => aboutScript(tryableAt)),
  ),
  ownRequest(
    own.tryRequest,
    later(({ tried }) => aboutScript(tried)),
  ),
  ownRequest(
    own.compareRequest,
    later(({ comparison }) => comparison),
  ),
  ownRequest(
    own.flightFormRequest,
    later(({ flightFormOf }) => aboutScript(flightFormOf)),
  ),
  ownRequest(
    own.flightAnswerRequest,
    later(({ flightAnswerFault }) => aboutScript(flightAnswerFault)),
  ),
  ownRequest(
    own.noteFlightRequest,
    later(({ noteFlight }) => aboutScript(noteFlight)),
  ),
  ownRequest(
    own.benchCardRequest,
    later(({ benchCardOf }) => aboutWholeScript(benchCardOf)),
  ),
  ownRequest(
    own.keepReadingsRequest,
    later(({ keepReadings }) => aboutWholeScript(keepReadings)),
  ),
  ownRequest(
    own.boardsRequest,
    later(({ boards }) => boards),
  ),
  ownRequest(
    own.boardTextRequest,
    later(({ boardText }) => aboutWholeScript(boardText)),
  ),
  ownRequest(
    own.readRequest,
    later(({ scriptFromCapture }) => scriptFromCapture),
  ),
  ownRequest(
    own.proveRequest,
    later(({ proof }) => aboutWholeScript(proof)),
  ),
  ownRequest(
    own.learnRequest,
    later(({ learnedFrom }) => learnedFrom),
  ),
  ownRequest(
    own.parametersRequest,
    later(({ confirmableParameters }) => confirmableParameters),
  ),
  ownRequest(
    own.makeProfileRequest,
    later(({ madeProfile }) => madeProfile),
  ),
];

/** For a request that waits for a person to open or start something: what answers it is loaded when it is asked. */
function later<P, R>(pick: (part: typeof import('./later')) => Answer<P, R>): Answer<P, R> {
  return async (served, params, token) => {
    const answer = pick(await import('./later'));
    stopIfCancelled(token);
    return answer(served, params, token);
  };
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

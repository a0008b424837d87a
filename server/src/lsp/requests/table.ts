import type { Connection, RequestType, ServerCapabilities } from 'vscode-languageserver';
import * as board from '../board-protocol';
import { stopIfCancelled } from '../cancelled';
import { diagnosticCapability } from '../documents/diagnostics';
import * as fileMessages from '../files-protocol';
import * as flight from '../flight-protocol';
import * as learn from '../learn-protocol';
import {
  CodeActionRequest,
  CodeActionResolveRequest,
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
  DocumentDiagnosticReportKind,
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
  WillRenameFilesRequest,
  WorkspaceDiagnosticRequest,
  WorkspaceSymbolRequest,
} from '../library';
import type { OwnRequest } from '../own-message';
import * as own from '../protocol';
import * as recording from '../recording-protocol';
import * as values from '../values-protocol';
import {
  aboutAnyText,
  aboutScript,
  aboutScriptOnBoard,
  aboutWholeScript,
  aboutWholeText,
  acrossScripts,
} from './about-script';
import { codeActionCapability, renameCapability, tokensCapability } from './capabilities';
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
import {
  type Capability,
  type MessageRow,
  notification,
  ownNotification,
  ownRequest,
  type RequestHandler,
  request,
  type Services,
} from './row';
import { setAt, summaryOf } from './summary';

const aText = object(about);
const aPlace = object(here);
const aRange = object(within);
const files = list(object({ uri: text }));

/** Every request and notification that the server takes, a row each. */
const rows: readonly MessageRow[] = [
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
  languageFeature(
    WillRenameFilesRequest.type,
    object({ files: list(object({ oldUri: text, newUri: text })) }),
    {},
    ({ renamesFollowed }) => renamesFollowed,
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
    ({ session, diagnostics, workspaceFindings }, { textDocument: { uri }, previousResultId }) =>
      session.isOpen(uri)
        ? diagnostics.report(uri, previousResultId)
        : { kind: DocumentDiagnosticReportKind.Full, ...workspaceFindings.last(uri) },
    diagnosticCapability,
  ),
  request(
    WorkspaceDiagnosticRequest.type,
    object({ previousResultIds: list(object({ uri: text, value: text })) }),
    ({ workspaceFindings }, params, token) => workspaceFindings.report(params, token),
  ),
  languageFeature(HoverRequest.type, aPlace, { hoverProvider: true }, ({ hoverAt, boardHoverAt }) =>
    aboutScript(hoverAt, boardHoverAt),
  ),
  languageFeature(
    CompletionRequest.type,
    aPlace,
    { completionProvider: { triggerCharacters: ['.', '[', '=', '@', ' ', '"'], resolveProvider: true } },
    ({ scriptCompletion, boardTextCompletion }) => aboutScript(scriptCompletion, boardTextCompletion),
  ),
  languageFeature(CompletionResolveRequest.type, object({}), {}, ({ resolvedItem }) => resolvedItem),
  languageFeature(InlayHintRequest.type, aRange, { inlayHintProvider: true }, ({ hintsIn }) =>
    aboutAnyText(hintsIn),
  ),
  languageFeature(CodeLensRequest.type, aText, { codeLensProvider: {} }, ({ lensesOf }) =>
    aboutScript(lensesOf),
  ),
  languageFeature(
    CodeActionRequest.type,
    object({ ...within, context: object({ only: optional(list(text)) }) }),
    codeActionCapability,
    ({ scriptActions, boardActions }) => aboutScript(scriptActions, boardActions),
  ),
  languageFeature(CodeActionResolveRequest.type, object({}), {}, ({ resolvedAction }) => resolvedAction),
  languageFeature(
    DocumentFormattingRequest.type,
    aText,
    { documentFormattingProvider: true },
    ({ formatted }) => aboutScript(formatted),
  ),
  languageFeature(
    DocumentRangeFormattingRequest.type,
    aRange,
    { documentRangeFormattingProvider: true },
    ({ formattedRange }) => aboutScript(formattedRange),
  ),
  languageFeature(PrepareRenameRequest.type, aPlace, {}, ({ renameableAt }) => aboutScript(renameableAt)),
  languageFeature(
    RenameRequest.type,
    object({ ...here, newName: text }),
    renameCapability,
    ({ renamed }) => renamed,
  ),
  languageFeature(DefinitionRequest.type, aPlace, { definitionProvider: true }, ({ definitionAt }) =>
    aboutScript(definitionAt),
  ),
  languageFeature(
    ReferencesRequest.type,
    object({ ...here, context: object({ includeDeclaration: flag }) }),
    { referencesProvider: { workDoneProgress: true } },
    ({ referencesTo }) => acrossScripts(referencesTo),
  ),
  languageFeature(
    DocumentHighlightRequest.type,
    aPlace,
    { documentHighlightProvider: true },
    ({ highlightsOf }) => aboutScript(highlightsOf),
  ),
  languageFeature(DocumentLinkRequest.type, aText, { documentLinkProvider: {} }, ({ linksIn }) =>
    aboutScript(linksIn),
  ),
  languageFeature(
    DocumentSymbolRequest.type,
    aText,
    { documentSymbolProvider: true },
    ({ scriptSymbols, boardSymbols }) => aboutScript(scriptSymbols, boardSymbols),
  ),
  languageFeature(
    WorkspaceSymbolRequest.type,
    object({ query: text }),
    { workspaceSymbolProvider: { workDoneProgress: true } },
    ({ symbolsEverywhere }) => symbolsEverywhere,
  ),
  languageFeature(
    FoldingRangeRequest.type,
    aText,
    { foldingRangeProvider: true },
    ({ scriptFolding, boardTextFolding }) => aboutScript(scriptFolding, boardTextFolding),
  ),
  languageFeature(
    SelectionRangeRequest.type,
    object({ ...about, positions: list(position) }),
    { selectionRangeProvider: true },
    ({ selectionsAt }) => aboutScript(selectionsAt),
  ),
  languageFeature(SemanticTokensRequest.type, aText, tokensCapability, ({ tokensOf }) =>
    aboutScript(tokensOf),
  ),
  languageFeature(SemanticTokensRangeRequest.type, aRange, {}, ({ tokensIn }) => aboutScript(tokensIn)),

  ownRequest(own.summaryRequest, aboutAnyText(summaryOf)),
  ownRequest(own.setHereRequest, aboutAnyText(setAt)),
  languageFeature(own.explainRequest, own.explainRequest.form, {}, ({ explanationAt }) =>
    aboutAnyText(explanationAt),
  ),
  languageFeature(
    own.explainCheckRequest,
    own.explainCheckRequest.form,
    {},
    ({ checkExplained }) => checkExplained,
  ),
  languageFeature(
    own.hoverElsewhereRequest,
    own.hoverElsewhereRequest.form,
    {},
    ({ hoverElsewhere }) => hoverElsewhere,
  ),
  onDemand(own.sheetRequest, ({ sheetOf }) => aboutAnyText(sheetOf)),
  onDemand(values.tryableRequest, ({ tryableAt }) => aboutScript(tryableAt)),
  onDemand(values.tryRequest, ({ tried }) => aboutScript(tried)),
  onDemand(values.narrowingRequest, ({ narrowingOf }) => aboutScript(narrowingOf)),
  onDemand(values.findRequest, ({ valuesFound }) => valuesFound),
  onDemand(values.channelsRequest, ({ channelsFound }) => channelsFound),
  onDemand(values.linesToWriteRequest, ({ linesFor }) => aboutScript(linesFor)),
  onDemand(own.compareRequest, ({ comparison }) => comparison),
  onDemand(own.variantsRequest, ({ variantsToCompare }) => aboutWholeScript(variantsToCompare)),
  onDemand(flight.flightFormRequest, ({ flightFormOf }) => aboutScript(flightFormOf)),
  onDemand(flight.flightAnswerRequest, ({ flightAnswerFault }) => aboutScript(flightAnswerFault)),
  onDemand(flight.noteFlightRequest, ({ noteFlight }) => aboutScript(noteFlight)),
  onDemand(own.salesPageRequest, ({ salesPage }) => salesPage),
  onDemand(flight.benchCardRequest, ({ benchCardOf }) => aboutWholeScript(benchCardOf)),
  ofRecordings(recording.recordingRequest, ({ answerRecording }) => answerRecording),
  ofRecordings(recording.confirmColumnsRequest, ({ columnsConfirmed }) => columnsConfirmed),
  ofRecordings(recording.grownRequest, ({ noiseGrown }) => noiseGrown),
  ofRecordings(recording.recordedFlightsRequest, ({ flightsRecorded }) => flightsRecorded),
  ofRecordings(recording.useMeasuredRequest, ({ measuredWritten }) => aboutWholeScript(measuredWritten)),
  onDemand(flight.checkReadingRequest, ({ readingTyped }) => aboutScript(readingTyped)),
  ofRecordings(learn.countsMeasuredRequest, ({ countsMeasured }) => countsMeasured),
  onDemand(flight.keepReadingsRequest, ({ keepReadings }) => aboutWholeScript(keepReadings)),
  ownRequest(fileMessages.writtenRequest, ({ documents }, { uri }) => documents.written(uri)),
  onDemand(board.keepRequest, ({ keptChanged }) => keptChanged),
  onDemand(board.boardsRequest, ({ boards }) => boards),
  onDemand(board.boardTextRequest, ({ boardTextFor }) => aboutScriptOnBoard(boardTextFor)),
  onDemand(board.readRequest, ({ scriptFromCapture }) => scriptFromCapture),
  onDemand(board.proveRequest, ({ proof }) => aboutScriptOnBoard(proof)),
  onDemand(learn.meaningsRequest, ({ boardMeanings }) => boardMeanings),
  onDemand(learn.sayMeaningsRequest, ({ meaningsSaid }) => meaningsSaid),
  onDemand(learn.choicesRequest, ({ choicesSaid }) => choicesSaid),
  onDemand(learn.parameterFormRequest, ({ formOfParameter }) => formOfParameter),
  onDemand(learn.sayableRequest, ({ sayable }) => sayable),
  onDemand(learn.hardwareRequest, ({ hardwareSaid }) => hardwareSaid),
  onDemand(learn.lessonRequest, ({ lessonSaid }) => lessonSaid),
  onDemand(board.newBoardTextRequest, ({ newBoardText }) => newBoardText),
  onDemand(learn.teachRequest, ({ taught }) => aboutWholeText(taught)),
];

/** What an editor asks for as it shows a script: what answers is loaded with the first, after the start. */
function languageFeature<P, R, E>(
  type: RequestType<P, R, E>,
  form: Form<unknown>,
  capability: Capability,
  pick: (part: typeof import('./language-features')) => RequestHandler<P, R>,
): MessageRow {
  const answer = answerIn(() => import('./language-features'), pick);
  return request(type, form, answer, capability);
}

/** A request that waits for a person to open or start something: what answers it is loaded when it is asked. */
function onDemand<P, R>(
  type: OwnRequest<P, R>,
  pick: (part: typeof import('./on-demand')) => RequestHandler<P, R>,
): MessageRow {
  return ownRequest(
    type,
    answerIn(() => import('./on-demand'), pick),
  );
}

/** About recordings, which most sessions have none of: a part by itself. */
function ofRecordings<P, R>(
  type: OwnRequest<P, R>,
  pick: (part: typeof import('./about-recordings')) => RequestHandler<P, R>,
): MessageRow {
  return ownRequest(
    type,
    answerIn(() => import('./about-recordings'), pick),
  );
}

/** An answer that lies in a part of the bundle. */
function answerIn<Part, P, R>(
  load: () => Promise<Part>,
  pick: (part: Part) => RequestHandler<P, R>,
): RequestHandler<P, R> {
  return async (services, params, token) => {
    const answer = pick(await load());
    stopIfCancelled(token);
    return answer(services, params, token);
  };
}

/** Registers every row that the client can use; gives what the server says that it can do. */
export function register(connection: Connection, services: Services): ServerCapabilities {
  const { client } = services.session;
  const all: ServerCapabilities = {};
  for (const row of rows) {
    const capability = typeof row.capability === 'function' ? row.capability(client) : row.capability;
    if (capability === null) continue;
    Object.assign(all, capability);
    row.register(connection, services);
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

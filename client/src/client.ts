import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type LanguageClientOptions,
  State,
  type StaticFeature,
} from 'vscode-languageclient';
import {
  type AboutScript,
  type BenchCardAnswer,
  type BoardChoice,
  type BoardTextAnswer,
  type BoardTextParams,
  benchCardRequest,
  boardOfNotification,
  boardsRequest,
  boardTextRequest,
  type ComparedSide,
  checkedNotification,
  compareRequest,
  explainRequest,
  type FlightAnswer,
  type FlightForm,
  type FlightNoted,
  type FlightToNote,
  flightAnswerRequest,
  flightFormRequest,
  hoverElsewhereRequest,
  keepReadingsRequest,
  type Learned,
  learnRequest,
  type MakeProfileParams,
  makeProfileRequest,
  noteFlightRequest,
  type OwnAbilities,
  type ProveAnswer,
  packInViewNotification,
  parametersRequest,
  proveRequest,
  type ReadAnswer,
  type ReadingTaken,
  readRequest,
  type SetHere,
  type SettingToTry,
  setHereRequest,
  sheetRequest,
  summaryRequest,
  type TryAnswer,
  tryableRequest,
  tryRequest,
} from '../../server/src/lsp/protocol';
import type { DrawnSheet } from '../../server/src/sheet/drawn-sheet';
import type { Tryable } from '../../server/src/sheet/try-value';
import { offerFiles } from './editor-files';
import { servedDocuments } from './language';

const { t } = vscode.l10n;

type Summary = NonNullable<Awaited<ReturnType<Client['summary']>>>;

export type { Summary };

/** How a client is made, and with it a server: as a process, or as a worker in a browser. */
export type NewLanguageClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** The server may come back this often in three minutes before it is left alone. */
const mostRestarts = 4;

/** The language server as the rest of the extension sees it. */
export class Client implements vscode.Disposable {
  private readonly checkedEmitter = new vscode.EventEmitter<vscode.Uri>();
  /** A script has been checked again. */
  readonly onChecked = this.checkedEmitter.event;
  private readonly hoveredEmitter = new vscode.EventEmitter<void>();
  /** A hover has been shown. */
  readonly onHovered = this.hoveredEmitter.event;
  private readonly stateEmitter = new vscode.EventEmitter<void>();
  /** `state` is another one now. */
  readonly onStateChanged = this.stateEmitter.event;
  readonly log = vscode.window.createOutputChannel('Propsoff', { log: true });
  private readonly scripts = vscode.workspace.createFileSystemWatcher('**/*.craft');
  private languageClient: BaseLanguageClient;
  /** What listens to the client. */
  private listeners: readonly vscode.Disposable[] = [];
  private restarts: number[] = [];
  private isGivenUp = false;
  /** Whether the client is being exchanged for another one. */
  private isChanging = false;

  constructor(private readonly newLanguageClient: NewLanguageClient) {
    this.languageClient = this.connected();
  }

  /** `starting` also while the server comes back after a crash; `stopped` when it will not by itself. */
  get state(): 'starting' | 'running' | 'stopped' {
    const { state } = this.languageClient;
    if (this.isChanging || state === State.Starting) return 'starting';
    if (state === State.Running) return 'running';
    return this.isGivenUp ? 'stopped' : 'starting';
  }

  async start(): Promise<void> {
    try {
      await this.languageClient.start();
    } catch (error) {
      this.log.error(`the server did not start: ${String(error)}`);
      this.giveUp(t('Propsoff could not start its checks. The log “Propsoff” says why.'));
    }
  }

  /** Starts another server, whatever became of the one before: it has stopped, or gives no word any more. */
  async startAgain(): Promise<void> {
    if (this.isChanging) return;
    this.isChanging = true;
    this.restarts = [];
    this.isGivenUp = false;
    this.stateEmitter.fire();
    const before = this.languageClient;
    for (const listener of this.listeners) listener.dispose();
    try {
      await before.dispose();
    } catch (error) {
      // It is left behind: its process ends by itself once nobody talks to it.
      this.log.warn(`the server before did not end in time: ${String(error)}`);
    }
    // A client that failed to start can't be started another time.
    this.languageClient = this.connected();
    this.isChanging = false;
    await this.start();
  }

  async stop(): Promise<void> {
    if (this.languageClient.needsStop()) await this.languageClient.stop();
  }

  async summary(uri: vscode.Uri) {
    return this.ask(() => this.languageClient.sendRequest(summaryRequest, about(uri)));
  }

  async sheet(uri: vscode.Uri): Promise<DrawnSheet | null> {
    return this.ask(() => this.languageClient.sendRequest(sheetRequest, about(uri)));
  }

  async setHere(uri: vscode.Uri, { line, character }: vscode.Position): Promise<SetHere | null> {
    const position = { line, character };
    return this.ask(() => this.languageClient.sendRequest(setHereRequest, { ...about(uri), position }));
  }

  async flightForm(uri: vscode.Uri, record: string | null, today: string): Promise<FlightForm | null> {
    return this.ask(() =>
      this.languageClient.sendRequest(flightFormRequest, { ...about(uri), record, today }),
    );
  }

  /** Why an answer about a flight can't be written; null if it can. */
  async flightAnswerFault(uri: vscode.Uri, answer: FlightAnswer): Promise<string | null> {
    return this.ask(() => this.languageClient.sendRequest(flightAnswerRequest, { ...about(uri), ...answer }));
  }

  async noteFlight(uri: vscode.Uri, flight: FlightToNote): Promise<FlightNoted | null> {
    return this.ask(() => this.languageClient.sendRequest(noteFlightRequest, { ...about(uri), ...flight }));
  }

  async benchCard(uri: vscode.Uri): Promise<BenchCardAnswer | null> {
    return this.ask(() => this.languageClient.sendRequest(benchCardRequest, about(uri)));
  }

  async keepReadings(uri: vscode.Uri, readings: readonly ReadingTaken[], today: string) {
    return this.ask(() =>
      this.languageClient.sendRequest(keepReadingsRequest, { ...about(uri), readings, today }),
    );
  }

  async tryable(uri: vscode.Uri, setting: SettingToTry): Promise<Tryable | null> {
    return this.ask(() => this.languageClient.sendRequest(tryableRequest, { ...about(uri), ...setting }));
  }

  /** What would be if a setting held something else, written as in a script. */
  async tryValue(uri: vscode.Uri, setting: SettingToTry, to: string): Promise<TryAnswer | null> {
    return this.ask(() => this.languageClient.sendRequest(tryRequest, { ...about(uri), ...setting, to }));
  }

  async explain(uri: vscode.Uri, position: vscode.Position): Promise<string | null> {
    const { line, character } = position;
    return this.ask(() =>
      this.languageClient.sendRequest(explainRequest, { ...about(uri), position: { line, character } }),
    );
  }

  async pickPack(uri: vscode.Uri, pack: string): Promise<void> {
    await this.languageClient.sendNotification(packInViewNotification, {
      uri: about(uri).textDocument.uri,
      pack,
    });
  }

  async boards(): Promise<readonly BoardChoice[]> {
    return (await this.ask(() => this.languageClient.sendRequest(boardsRequest))) ?? [];
  }

  async boardText(
    uri: vscode.Uri,
    options: Omit<BoardTextParams, 'textDocument'>,
  ): Promise<BoardTextAnswer | null> {
    return this.ask(() => this.languageClient.sendRequest(boardTextRequest, { ...about(uri), ...options }));
  }

  async readCapture(capture: string, board: string | null): Promise<ReadAnswer | null> {
    return this.ask(() => this.languageClient.sendRequest(readRequest, { capture, board }));
  }

  async prove(uri: vscode.Uri, capture: string, board: string | null): Promise<ProveAnswer | null> {
    return this.ask(() => this.languageClient.sendRequest(proveRequest, { ...about(uri), capture, board }));
  }

  async compare(before: ComparedSide, after: ComparedSide) {
    return this.ask(() => this.languageClient.sendRequest(compareRequest, { before, after }));
  }

  /** What is under a position of a text that is only shown; `beside`: where it would lie. */
  async hoverElsewhere(document: vscode.TextDocument, beside: vscode.Uri, at: vscode.Position) {
    const position = { line: at.line, character: at.character };
    const params = { uri: about(beside).textDocument.uri, text: document.getText(), position };
    return this.ask(() => this.languageClient.sendRequest(hoverElsewhereRequest, params));
  }

  async learn(capture: string): Promise<Learned | null> {
    return this.ask(() => this.languageClient.sendRequest(learnRequest, { capture }));
  }

  async makeProfile(params: MakeProfileParams) {
    return this.ask(() => this.languageClient.sendRequest(makeProfileRequest, params));
  }

  /** Names of the parameters that a board's setting may stand for. */
  async parameters(): Promise<readonly string[]> {
    return (await this.ask(() => this.languageClient.sendRequest(parametersRequest))) ?? [];
  }

  async pickBoard(uri: vscode.Uri, board: string): Promise<void> {
    await this.languageClient.sendNotification(boardOfNotification, {
      uri: about(uri).textDocument.uri,
      board,
    });
  }

  dispose(): void {
    const own = [this.log, this.scripts, this.checkedEmitter, this.hoveredEmitter, this.stateEmitter];
    for (const disposable of [...this.listeners, ...own]) disposable.dispose();
  }

  private connected(): BaseLanguageClient {
    const client = this.newLanguageClient(this.clientOptions());
    client.registerFeature(ownMessages);
    this.listeners = [
      ...offerFiles(client),
      client.onNotification(checkedNotification, ({ uri }) =>
        this.checkedEmitter.fire(vscode.Uri.parse(uri)),
      ),
      client.onDidChangeState(({ newState }) => {
        this.log.info(`server: ${State[newState]}`);
        this.stateEmitter.fire();
      }),
    ];
    return client;
  }

  /** An answer, or null while the server is not there. */
  private async ask<T>(send: () => Promise<T | null>): Promise<T | null> {
    if (this.state !== 'running') return null;
    try {
      return await send();
    } catch (error) {
      this.log.warn(`no answer: ${String(error)}`);
      return null;
    }
  }

  private giveUp(why: string): void {
    this.isGivenUp = true;
    this.stateEmitter.fire();
    void this.offerStart(why);
  }

  private async offerStart(why: string): Promise<void> {
    const [again, log] = [t('Start the Checks Again'), t('Show the Log')];
    const picked = await vscode.window.showErrorMessage(why, again, log);
    if (picked === again) await this.startAgain();
    if (picked === log) this.log.show();
  }

  private clientOptions(): LanguageClientOptions {
    return {
      documentSelector: servedDocuments(),
      synchronize: { fileEvents: this.scripts },
      outputChannel: this.log,
      middleware: {
        provideHover: async (document, position, token, next) => {
          const hover = await next(document, position, token);
          if (hover) this.hoveredEmitter.fire();
          return hover;
        },
        provideCodeLenses: (document, token, next) =>
          vscode.workspace.getConfiguration('propsoff', document).get('codeLens', true)
            ? next(document, token)
            : [],
      },
      markdown: { isTrusted: false, supportHtml: false },
      errorHandler: {
        error: () => ({ action: ErrorAction.Continue }),
        closed: () => this.closed(),
      },
    };
  }

  /** Restarts a server that died, but never in a loop. */
  private closed() {
    const now = Date.now();
    this.restarts = [...this.restarts.filter((at) => now - at < 180_000), now];
    if (this.restarts.length <= mostRestarts) return { action: CloseAction.Restart };
    this.log.error('the server keeps stopping and is left alone now');
    this.giveUp(t('Propsoff’s checks keep stopping and are off now. The log “Propsoff” says why.'));
    return { action: CloseAction.DoNotRestart, handled: true };
  }
}

/** Tells the server that this client knows its messages beside those of the protocol. */
const ownMessages: StaticFeature = {
  fillClientCapabilities: (capabilities) => {
    const propsoff: OwnAbilities = { checked: true, files: true, commands: true };
    capabilities.experimental = { ...capabilities.experimental, propsoff };
  },
  initialize: () => undefined,
  getState: () => ({ kind: 'static' }),
  clear: () => undefined,
};

function about(uri: vscode.Uri): AboutScript {
  return { textDocument: { uri: uri.toString() } };
}

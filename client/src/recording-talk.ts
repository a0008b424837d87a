import * as vscode from 'vscode';
import {
  confirmColumnsRequest,
  grownRequest,
  type RecordingAsked,
  type RecordingFinding,
  type RecordingProposal,
  type RecordingTold,
  recordedFlightsRequest,
  recordingRequest,
  useMeasuredRequest,
} from '../../server/src/lsp/recording-protocol';
import { recordingChanges } from '../../server/src/sheet/compare/recordings';
import type {
  FlightNoise,
  FromRecording,
  RecordingName,
  SaidColumns,
  ToRecording,
} from '../recording/messages';
import { about } from './about';
import { applyEdits } from './apply-edits';
import type { Client } from './client';
import { craftFiles } from './craft-files';
import { nameOf } from './file-name';
import { goTo } from './go-to';
import { activeCraftScript } from './language';
import { pickRecording } from './pick-recording';
import { keepLayout } from './recording-layout-file';

const { t } = vscode.l10n;

/** What a page of a recording has done for it. */
interface Page {
  readonly tell: (message: ToRecording) => void;
  /** Opens the page of another recording. */
  readonly open: (uri: string) => void;
  /** What was told of a recording is remembered. */
  readonly note: (uri: vscode.Uri, told: RecordingTold) => void;
}

/** One page's talk with the server: one recording is read at a time, and a later one takes its place. */
export class RecordingTalk {
  private reading: vscode.CancellationTokenSource | null = null;
  /** The craft that was flown; undefined until it has been looked for. */
  private script: vscode.Uri | null | undefined;
  private flight = 1;
  /** What the pilot has just said of the columns, as a layout's text; null: as it is kept. */
  private layout: string | null = null;
  /** What the layout is called that holds the columns now; null: none does. */
  private keptAs: string | null = null;
  private told: RecordingTold | null = null;
  /** What was told before a proposal was written, to be held against what is told after it. */
  private toldBefore: RecordingTold | null = null;

  constructor(
    private readonly client: Client,
    private readonly uri: vscode.Uri,
    private readonly page: Page,
  ) {}

  stop(): void {
    this.reading?.cancel();
    this.reading = null;
  }

  async received(message: FromRecording): Promise<void> {
    switch (message.kind) {
      case 'ready':
        return this.read();
      case 'stop':
        this.stop();
        this.page.tell({ kind: 'nothing', name: this.name, why: t('Stopped: the recording was not read.') });
        return;
      case 'read-again':
        return this.readAgain();
      case 'flight':
        this.flight = message.flight;
        this.toldBefore = null;
        return this.read();
      case 'script':
        return this.pickScript();
      case 'confirm-anew':
        return this.read({ confirmsAnew: true });
      case 'columns':
        return this.confirm(message.said, message.isKept);
      case 'compare':
        return this.compare();
      case 'history':
        return this.history();
      case 'back':
        if (this.told === null) return this.read();
        this.page.tell({ kind: 'told', name: this.name, told: this.told });
        return;
      case 'open':
        return this.page.open(message.uri);
      case 'go':
        return goTo(message.target, vscode.ViewColumn.One);
      case 'write':
        return this.write(message.title);
    }
  }

  private get name(): RecordingName {
    return { file: nameOf(this.uri), script: this.script == null ? null : nameOf(this.script) };
  }

  private async read(options: { readonly confirmsAnew?: boolean } = {}): Promise<void> {
    const told = await this.ask(this.uri, this.flight, options);
    if (told === null) return;
    this.told = told;
    this.page.tell({ kind: 'told', name: this.name, told });
  }

  /** After a proposal was written: what was told before beside what is told now. */
  private async readAgain(): Promise<void> {
    const before = this.toldBefore;
    if (before === null) return this.read();
    const told = await this.ask(this.uri, this.flight);
    if (told === null) return;
    this.told = told;
    this.toldBefore = null;
    const { file } = this.name;
    await this.tellCompared(
      { name: t('{name} before the change', { name: file }), told: before },
      { name: t('{name} now', { name: file }), told },
      true,
    );
  }

  /** What has grown from each flight to the next. */
  private async grown(
    flights: readonly { readonly name: string; readonly told: RecordingTold }[],
  ): Promise<readonly RecordingFinding[]> {
    const inOrder = flights.map(({ name, told }) => ({
      name,
      axes: (told.report.noise.told ?? []).map(({ axis, shaking }) => ({ axis, shaking })),
    }));
    return (await this.client.request(grownRequest, { flights: inOrder })) ?? [];
  }

  private async tellCompared(
    before: { readonly name: string; readonly told: RecordingTold },
    after: { readonly name: string; readonly told: RecordingTold },
    isSame: boolean,
  ): Promise<void> {
    const changes = recordingChanges(before.told.report, after.told.report);
    const grown = isSame ? [] : await this.grown([before, after]);
    this.page.tell({ kind: 'compared', isSame, before, after, changes, grown });
  }

  /** What the columns hold, once the file can be read so. */
  private async confirm({ rate, columns }: SaidColumns, isKept: boolean): Promise<void> {
    const layout = JSON.stringify({ version: 1, rate: rate ?? undefined, columns });
    const answer = await this.client.request(confirmColumnsRequest, { uri: this.uri.toString(), layout });
    if (answer?.kind !== 'confirmed') {
      this.page.tell({ kind: 'columns-refused', why: answer?.message ?? noChecks() });
      return;
    }
    if (isKept) {
      const name = await keepLayout(this.uri, answer.text, this.keptAs);
      if (name === null) return;
      this.keptAs = name;
    }
    this.layout = answer.text;
    await this.read();
  }

  private async compare(): Promise<void> {
    const now = this.told;
    const other = await pickRecording(this.client, t('Compare with Which Recording?'), this.uri);
    if (other === undefined || now === null) return;
    const told = await this.ask(other, 1);
    if (told === null) return;
    const [one, here] = [
      { name: nameOf(other), told },
      { name: this.name.file, told: now },
    ];
    if (await this.isLater(other)) await this.tellCompared(here, one, false);
    else await this.tellCompared(one, here, false);
  }

  /** Whether another recording was flown later, as far as scripts tell. */
  private async isLater(other: vscode.Uri): Promise<boolean> {
    const named = await this.client.request(recordedFlightsRequest, { recording: null, script: null });
    const dateOf = (uri: vscode.Uri) =>
      named?.find((one) => vscode.Uri.parse(one.uri).toString() === uri.toString())?.date ?? null;
    const [own, others] = [dateOf(this.uri), dateOf(other)];
    return own !== null && others !== null && own < others;
  }

  /** The flights of the script that name a recording, the earliest first. */
  private async history(): Promise<void> {
    const script = this.script?.toString();
    if (script === undefined) return;
    const named = await this.client.request(recordedFlightsRequest, { recording: null, script });
    const flights: FlightNoise[] = [];
    for (const flight of [...(named ?? [])].sort((one, other) => order(one.date, other.date))) {
      const uri = vscode.Uri.parse(flight.uri);
      const answer = await this.answered(uri, 1);
      if (answer === null) return;
      flights.push(
        answer.kind === 'told'
          ? { flight, told: answer, why: null }
          : {
              flight,
              told: null,
              why: answer.kind === 'refused' ? answer.message : notConfirmed(),
            },
      );
    }
    const told = flights.flatMap((one) =>
      one.told === null ? [] : [{ name: one.flight.path, told: one.told }],
    );
    this.page.tell({ kind: 'history', flights, grown: await this.grown(told) });
  }

  private async pickScript(): Promise<void> {
    const items = (await craftFiles()).map((uri) => ({
      label: nameOf(uri),
      description: vscode.workspace.asRelativePath(uri),
      uri,
    }));
    const picked = await vscode.window.showQuickPick(items, {
      title: t('Which Craft Was Flown?'),
      matchOnDescription: true,
    });
    if (picked === undefined) return;
    this.script = picked.uri;
    this.toldBefore = null;
    await this.read();
  }

  /** As one edit that can be undone. */
  private async write(title: string): Promise<void> {
    const { told, script } = this;
    const proposal = told === null ? undefined : proposalsOf(told).find((one) => one.title === title);
    if (script == null || told === null || proposal === undefined) return;
    await vscode.workspace.openTextDocument(script);
    const asked = { ...about(script), sets: proposal.sets };
    const edits = await this.client.request(useMeasuredRequest, asked);
    const refusal =
      edits === null ? t('a line of the script can’t hold it') : await applyEdits(script, edits);
    if (refusal !== null) {
      void vscode.window.showWarningMessage(t('Nothing was written: {reason}.', { reason: refusal }));
      return;
    }
    this.toldBefore ??= told;
    this.page.tell({ kind: 'written', title });
  }

  /** What is told of a recording; null where nothing is, which the page has been told by then. */
  private async ask(
    uri: vscode.Uri,
    flight: number,
    { confirmsAnew = false }: { readonly confirmsAnew?: boolean } = {},
  ): Promise<RecordingTold | null> {
    const answer = await this.answered(uri, flight, confirmsAnew);
    if (answer === null || answer.kind === 'told') return answer;
    const { name } = this;
    if (answer.kind === 'refused') this.page.tell({ kind: 'nothing', name, why: answer.message });
    else if (this.isOwn(uri)) {
      this.keptAs = answer.kept ?? this.keptAs;
      this.page.tell({ kind: 'columns', name, asked: answer });
    } else this.page.tell({ kind: 'nothing', name, why: notConfirmed() });
    return null;
  }

  /** Null where it was stopped, or another took its place. */
  private async answered(uri: vscode.Uri, flight: number, confirmsAnew = false) {
    this.stop();
    const reading = new vscode.CancellationTokenSource();
    this.reading = reading;
    await this.client.settled();
    this.script ??= await this.scriptOf();
    const script = this.script;
    // The server tells of scripts that are open; one that no editor shows is let go after a while.
    if (script !== null) await vscode.workspace.openTextDocument(script);
    const name = { ...this.name, file: nameOf(uri) };
    const tell = (share: number, doing: string) => {
      if (this.reading === reading) this.page.tell({ kind: 'reading', name, share, doing });
    };
    tell(0, t('opening'));
    const asked: RecordingAsked = {
      uri: uri.toString(),
      script: script?.toString() ?? null,
      flight,
      layout: this.isOwn(uri) ? this.layout : null,
      confirmsAnew,
    };
    const answer = await this.client.requestTelling(recordingRequest, asked, reading.token, tell);
    if (this.reading !== reading) return null;
    this.reading = null;
    if (answer?.kind === 'told' && flight === 1) this.page.note(uri, answer);
    return answer ?? { kind: 'refused' as const, message: noChecks() };
  }

  private isOwn(uri: vscode.Uri): boolean {
    return uri.toString() === this.uri.toString();
  }

  /** The script that names the recording, where one does; else the one that the pilot works on. */
  private async scriptOf(): Promise<vscode.Uri | null> {
    const recording = this.uri.toString();
    const named = await this.client.request(recordedFlightsRequest, { recording, script: null });
    const scripts = [...new Set((named ?? []).map(({ script }) => vscode.Uri.parse(script).toString()))];
    const active = activeCraftScript()?.document.uri;
    const own = scripts.find((one) => one === active?.toString()) ?? scripts[0];
    return own === undefined ? (active ?? null) : vscode.Uri.parse(own);
  }
}

function noChecks(): string {
  return t('Propsoff’s checks are not running.');
}

function notConfirmed(): string {
  return t('What its columns hold is not confirmed yet: open that recording by itself.');
}

function proposalsOf({ report }: RecordingTold): readonly RecordingProposal[] {
  return [...report.findings.flatMap(({ proposals }) => proposals), ...report.proposals];
}

/** Those without a date come last. */
function order(one: string | null, other: string | null): number {
  return (one ?? '9').localeCompare(other ?? '9');
}

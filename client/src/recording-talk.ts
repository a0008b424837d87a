import * as vscode from 'vscode';
import {
  confirmColumnsRequest,
  type RecordingProposal,
  type RecordingReported,
  useMeasuredRequest,
} from '../../server/src/lsp/recording-protocol';
import { recordingChanges } from '../../server/src/sheet/compare/recordings';
import type { RecordingBrief } from '../recording/brief';
import type { FromRecording, RecordingName, SaidColumns, ToRecording } from '../recording/messages';
import { about } from './about';
import { applyEdits } from './apply-edits';
import type { Client } from './client';
import { craftFiles } from './craft-files';
import { nameOf } from './file-name';
import { goTo } from './go-to';
import { pickRecording } from './pick-recording';
import { flightNoises, grownIn, grownSinceLast, isLater, notConfirmed } from './recording-flights';
import { keepLayout } from './recording-layout-file';
import { noChecks, RecordingReader, type WantedFlight } from './recording-reader';

const { t } = vscode.l10n;

/** What a page of a recording has done for it. */
interface RecordingPage {
  readonly send: (message: ToRecording) => void;
  /** Opens the page of another recording. */
  readonly open: (uri: string) => void;
  /** What was reported of a recording is remembered. */
  readonly note: (uri: vscode.Uri, reported: RecordingReported) => void;
  /** How the craft shook on the flight of another recording, as far as it was read. */
  readonly shaking: (uri: string) => RecordingBrief['shaking'];
}

/** One page's talk with the server. */
export class RecordingTalk {
  private readonly reader: RecordingReader;
  private flight: number | null = null;
  /** What the layout is called that holds the columns now; null: none does. */
  private keptAs: string | null = null;
  private reported: RecordingReported | null = null;
  /** What was reported before a proposal was written, to be held against what is reported after it. */
  private reportedBefore: RecordingReported | null = null;

  constructor(
    private readonly client: Client,
    private readonly uri: vscode.Uri,
    private readonly page: RecordingPage,
  ) {
    this.reader = new RecordingReader(client, uri, {
      progress: (read, share, doing) =>
        page.send({ kind: 'reading', name: { ...this.name, file: nameOf(read) }, share, doing }),
      reported: (read, reported) => page.note(read, reported),
    });
  }

  stop(): void {
    this.reader.stop();
  }

  async received(message: FromRecording): Promise<void> {
    switch (message.kind) {
      case 'ready':
        return this.read();
      case 'stop':
        this.stop();
        this.page.send({ kind: 'nothing', name: this.name, why: t('Stopped: the recording was not read.') });
        return;
      case 'read-again':
        return this.readAgain();
      case 'flight':
        this.flight = message.flight;
        this.reportedBefore = null;
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
        if (this.reported === null) return this.read();
        this.page.send({ kind: 'told', name: this.name, reported: this.reported });
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
    const { script } = this.reader;
    return { file: nameOf(this.uri), script: script === null ? null : nameOf(script) };
  }

  private async read(options: { readonly confirmsAnew?: boolean } = {}): Promise<void> {
    const reported = await this.ask({ uri: this.uri, flight: this.flight, ...options });
    if (reported === null) return;
    this.reported = await this.withGrown(reported);
    this.page.send({ kind: 'told', name: this.name, reported: this.reported });
  }

  /** Beside what it says by itself, what has grown since the flight before. */
  private async withGrown(reported: RecordingReported): Promise<RecordingReported> {
    const { script } = this.reader;
    if (script === null) return reported;
    const grown = await grownSinceLast(this.client, script, { uri: this.uri, reported }, this.page.shaking);
    return { ...reported, report: { ...reported.report, findings: [...grown, ...reported.report.findings] } };
  }

  /** After a proposal was written: what was reported before beside what is reported now. */
  private async readAgain(): Promise<void> {
    const before = this.reportedBefore;
    if (before === null) return this.read();
    const reported = await this.ask({ uri: this.uri, flight: this.flight });
    if (reported === null) return;
    this.reported = reported;
    this.reportedBefore = null;
    const { file } = this.name;
    await this.sendCompared(
      { name: t('{name} before the change', { name: file }), reported: before },
      { name: t('{name} now', { name: file }), reported },
      true,
    );
  }

  private async sendCompared(
    before: { readonly name: string; readonly reported: RecordingReported },
    after: { readonly name: string; readonly reported: RecordingReported },
    isSame: boolean,
  ): Promise<void> {
    const changes = recordingChanges(before.reported.report, after.reported.report);
    const grown = isSame ? [] : await grownIn(this.client, [before, after]);
    this.page.send({ kind: 'compared', isSame, before, after, changes, grown });
  }

  /** What the columns hold, once the file can be read so. */
  private async confirm({ rate, columns }: SaidColumns, isKept: boolean): Promise<void> {
    const layout = JSON.stringify({ version: 1, rate: rate ?? undefined, columns });
    const answer = await this.client.request(confirmColumnsRequest, { uri: this.uri.toString(), layout });
    if (answer?.kind !== 'confirmed') {
      this.page.send({ kind: 'columns-refused', why: answer?.message ?? noChecks() });
      return;
    }
    if (isKept) {
      const name = await keepLayout(this.uri, answer.text, this.keptAs);
      if (name === null) return;
      this.keptAs = name;
    }
    this.reader.layout = answer.text;
    await this.read();
  }

  private async compare(): Promise<void> {
    const now = this.reported;
    const other = await pickRecording(this.client, t('Compare with Which Recording?'), this.uri);
    if (other === undefined || now === null) return;
    const reported = await this.ask({ uri: other, flight: null });
    if (reported === null) return;
    const [one, here] = [
      { name: nameOf(other), reported },
      { name: this.name.file, reported: now },
    ];
    if (await isLater(this.client, this.uri, other)) await this.sendCompared(here, one, false);
    else await this.sendCompared(one, here, false);
  }

  /** The flights of the script that name a recording, the earliest first. */
  private async history(): Promise<void> {
    const { script } = this.reader;
    const flights = script === null ? null : await flightNoises(this.client, this.reader, script);
    if (flights === null) return;
    const reported = flights.flatMap((one) =>
      one.reported === null ? [] : [{ name: one.flight.path, reported: one.reported }],
    );
    this.page.send({ kind: 'history', flights, grown: await grownIn(this.client, reported) });
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
    this.reader.useScript(picked.uri);
    this.reportedBefore = null;
    await this.read();
  }

  /** As one edit that can be undone. */
  private async write(title: string): Promise<void> {
    const { reported } = this;
    const { script } = this.reader;
    const proposal = reported === null ? undefined : proposalsOf(reported).find((one) => one.title === title);
    if (script === null || reported === null || proposal === undefined) return;
    await vscode.workspace.openTextDocument(script);
    const asked = { ...about(script), sets: proposal.sets };
    const edits = await this.client.request(useMeasuredRequest, asked);
    const refusal =
      edits === null ? t('a line of the script can’t hold it') : await applyEdits(script, edits);
    if (refusal !== null) {
      void vscode.window.showWarningMessage(t('Nothing was written: {reason}.', { reason: refusal }));
      return;
    }
    this.reportedBefore ??= reported;
    this.page.send({ kind: 'written', title });
  }

  /** What is reported of a recording; null where nothing is, which the page knows by then. */
  private async ask(wanted: WantedFlight): Promise<RecordingReported | null> {
    const answer = await this.reader.read(wanted);
    if (answer === null || answer.kind === 'told') return answer;
    const { name } = this;
    if (answer.kind === 'refused') this.page.send({ kind: 'nothing', name, why: answer.message });
    else if (this.reader.isOwn(wanted.uri)) {
      this.keptAs = answer.kept ?? this.keptAs;
      this.page.send({ kind: 'columns', name, asked: answer });
    } else this.page.send({ kind: 'nothing', name, why: notConfirmed() });
    return null;
  }
}

function proposalsOf({ report }: RecordingReported): readonly RecordingProposal[] {
  return [...report.findings.flatMap(({ proposals }) => proposals), ...report.proposals];
}

import * as vscode from 'vscode';
import {
  type RecordingAnswer,
  type RecordingAsked,
  type RecordingReported,
  recordedFlightsRequest,
  recordingRequest,
} from '../../server/src/lsp/recording-protocol';
import type { Client } from './client';
import { activeCraftScript } from './language';

const { t } = vscode.l10n;

/** Which part of a file is asked for. */
export interface WantedFlight {
  readonly uri: vscode.Uri;
  /** From 1; null: the longest of the file. */
  readonly flight: number | null;
  readonly confirmsAnew?: boolean;
}

/** Who wants to know of it. */
interface RecordingListener {
  /** How far it is, from 0 to 1, and with what. */
  readonly progress: (uri: vscode.Uri, share: number, doing: string) => void;
  readonly reported: (uri: vscode.Uri, reported: RecordingReported) => void;
}

/** Has recordings read for one craft, one at a time: a later one takes the place of an earlier one. */
export class RecordingReader {
  private reading: vscode.CancellationTokenSource | null = null;
  /** The craft that was flown; undefined until it has been looked for. */
  private chosen: vscode.Uri | null | undefined;
  /** What the pilot has just said of the own file's columns, as a layout's text; null: as it is kept. */
  layout: string | null = null;

  constructor(
    private readonly client: Client,
    /** The file that the page is of. */
    private readonly own: vscode.Uri,
    private readonly listener: RecordingListener,
  ) {}

  get script(): vscode.Uri | null {
    return this.chosen ?? null;
  }

  useScript(script: vscode.Uri): void {
    this.chosen = script;
  }

  stop(): void {
    this.reading?.cancel();
    this.reading = null;
  }

  isOwn(uri: vscode.Uri): boolean {
    return uri.toString() === this.own.toString();
  }

  /** Null where it was stopped, or another took its place. */
  async read({ uri, flight, confirmsAnew = false }: WantedFlight): Promise<RecordingAnswer | null> {
    this.stop();
    const reading = new vscode.CancellationTokenSource();
    this.reading = reading;
    this.chosen ??= await this.scriptOf();
    const script = await opened(this.chosen);
    const progress = (share: number, doing: string) => {
      if (this.reading === reading) this.listener.progress(uri, share, doing);
    };
    progress(0, t('opening'));
    const asked: RecordingAsked = {
      uri: uri.toString(),
      script,
      flight,
      layout: this.isOwn(uri) ? this.layout : null,
      confirmsAnew,
    };
    const answer = await this.client.requestWithProgress(recordingRequest, asked, reading.token, progress);
    if (this.reading !== reading) return null;
    this.reading = null;
    if (answer?.kind === 'told' && flight === null) this.listener.reported(uri, answer);
    return answer ?? { kind: 'refused', message: noChecks() };
  }

  /** The script that names the own file, where one does; else the one that the pilot works on. */
  private async scriptOf(): Promise<vscode.Uri | null> {
    const recording = this.own.toString();
    const named = await this.client.request(recordedFlightsRequest, { recording, script: null });
    const scripts = [...new Set((named ?? []).map(({ script }) => vscode.Uri.parse(script).toString()))];
    const active = activeCraftScript()?.document.uri;
    const own = scripts.find((one) => one === active?.toString()) ?? scripts[0];
    return own === undefined ? (active ?? null) : vscode.Uri.parse(own);
  }
}

/** The server tells of scripts that are open, and one that no editor shows is let go after a while. Null: it is gone. */
async function opened(script: vscode.Uri | null): Promise<string | null> {
  if (script === null) return null;
  try {
    await vscode.workspace.openTextDocument(script);
    return script.toString();
  } catch {
    return null;
  }
}

export function noChecks(): string {
  return t('Propsoff’s checks are not running.');
}

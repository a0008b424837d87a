import * as vscode from 'vscode';
import type { RecordingReport } from '../../server/src/lsp/recording-protocol';
import { type RecordingBrief, recordingBrief } from '../recording/brief';

/** Where it is kept, for each folder. */
const key = 'propsoff.recordings';
/** Of more recordings nobody wants to see at once what they said. */
const most = 60;

/** What recordings said when they were read last: the build sheet shows it beside their flights. */
export class RecordingsSaid implements vscode.Disposable {
  private readonly changedEmitter = new vscode.EventEmitter<void>();
  readonly onChanged = this.changedEmitter.event;

  constructor(private readonly memory: vscode.Memento) {}

  dispose(): void {
    this.changedEmitter.dispose();
  }

  all(): readonly RecordingBrief[] {
    return this.memory.get<readonly RecordingBrief[]>(key) ?? [];
  }

  /** The one that was read last comes first. */
  note(uri: vscode.Uri, report: RecordingReport): void {
    const brief = recordingBrief(uri.toString(), report);
    const others = this.all().filter((one) => one.uri !== brief.uri);
    void this.memory.update(key, [brief, ...others].slice(0, most));
    this.changedEmitter.fire();
  }
}

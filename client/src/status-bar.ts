import * as vscode from 'vscode';
import { type Summary, summaryRequest } from '../../server/src/lsp/protocol';
import { about } from './about';
import type { Client } from './client';
import { activeScript } from './language';

const { t } = vscode.l10n;

/** After an edit, what was counted before is not shown any longer than this without a word of the checks, ms. */
const longestWait = 1000;

/** What is shown in place of counts. */
interface StatusText {
  readonly text: string;
  readonly tooltip: string;
  readonly command: string;
  readonly isError?: true;
}

const starting: StatusText = {
  text: `$(sync~spin) ${t('starting checks')}`,
  tooltip: t('Propsoff’s checks are starting. Click for the log.'),
  command: 'propsoff.showLog',
};
const working: StatusText = {
  text: `$(sync~spin) ${t('checking')}`,
  tooltip: t(
    'Propsoff is still checking the last change. Click to start the checks again if that takes too long.',
  ),
  command: 'propsoff.startChecks',
};
const stopped: StatusText = {
  text: `$(error) ${t('checks stopped')}`,
  tooltip: t('Propsoff’s checks have stopped: nothing is checked. Click to start them again.'),
  command: 'propsoff.startChecks',
  isError: true,
};

/** Counts and the pack in view, for the active craft script; or that nothing is counted, and why. */
export class StatusBar implements vscode.Disposable {
  private readonly counts = vscode.window.createStatusBarItem(
    'propsoff.counts',
    vscode.StatusBarAlignment.Left,
    50,
  );
  private readonly pack = vscode.window.createStatusBarItem(
    'propsoff.pack',
    vscode.StatusBarAlignment.Left,
    49,
  );
  private readonly disposables: vscode.Disposable[];
  /** Counts looks at the client, so that a late answer never replaces a newer one. */
  private asked = 0;
  private waiting: ReturnType<typeof setTimeout> | null = null;

  constructor(private readonly client: Client) {
    this.counts.name = t('Propsoff: Findings');
    this.pack.name = t('Propsoff: Pack in View');
    this.pack.command = 'propsoff.pickPack';
    this.disposables = [
      this.counts,
      this.pack,
      client.onChecked((uri) => {
        if (isActive(uri)) void this.refresh();
      }),
      client.onStateChanged(() => void this.refresh()),
      vscode.window.onDidChangeActiveTextEditor(() => void this.refresh()),
      vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (contentChanges.length > 0 && isActive(document.uri)) this.expect();
      }),
    ];
    void this.refresh();
  }

  dispose(): void {
    this.expectNothing();
    for (const disposable of this.disposables) disposable.dispose();
  }

  private async refresh(): Promise<void> {
    this.asked += 1;
    const mine = this.asked;
    const uri = activeScript()?.document.uri;
    if (uri === undefined) return this.hide();
    this.expect();
    if (this.client.state === 'starting') this.showText(starting);
    const summary = await this.client.request(summaryRequest, about(uri));
    if (mine !== this.asked) return;
    if (this.client.state === 'stopped') this.showText(stopped);
    else if (summary === null) this.hide();
    else this.show(summary);
  }

  /** An answer is due: what is shown holds until it comes, but not for long. */
  private expect(): void {
    this.waiting ??= setTimeout(() => {
      if (this.client.state === 'running') this.showText(working);
    }, longestWait);
  }

  private expectNothing(): void {
    if (this.waiting !== null) clearTimeout(this.waiting);
    this.waiting = null;
  }

  private hide(): void {
    this.expectNothing();
    this.counts.hide();
    this.pack.hide();
  }

  private showText({ text, tooltip, command, isError }: StatusText): void {
    this.expectNothing();
    this.counts.text = text;
    this.counts.tooltip = tooltip;
    this.counts.command = command;
    this.counts.accessibilityInformation = { label: tooltip };
    this.counts.backgroundColor =
      isError === true ? new vscode.ThemeColor('statusBarItem.errorBackground') : undefined;
    this.counts.show();
    this.pack.hide();
  }

  private show({ counts, packs, packInView, readAs }: Summary): void {
    const mend = counts['must-fix'];
    const all = t('Propsoff: {mend} must-fix, {risk} risk, {note} note, {tidy} tidy', { ...counts, mend });
    this.showText({
      text: `$(checklist) ${withReading(countsText(mend, counts.risk), readAs)}`,
      tooltip: [all, ...uncheckedText(readAs)].join('. '),
      command: 'workbench.actions.view.problems',
    });
    if (packInView === null) return;
    this.pack.text = `$(plug) ${packInView}`;
    this.pack.tooltip = t('Pack in view: {pack} of {packs}. Click to look at another.', {
      pack: packInView,
      packs: packs.join(', '),
    });
    this.pack.show();
  }
}

function isActive(uri: vscode.Uri): boolean {
  return uri.toString() === activeScript()?.document.uri.toString();
}

function countsText(mend: number, risk: number): string {
  return risk === 1
    ? t('{mend} to mend, 1 risk', { mend })
    : t('{mend} to mend, {risk} risks', { mend, risk });
}

/** Few findings say little where little was looked at. */
function withReading(counts: string, readAs: Summary['readAs']): string {
  switch (readAs) {
    case 'whole':
      return counts;
    case 'part':
      return t('{counts}, read as a part', { counts });
    case 'incomplete':
      return t('{counts}, not all of it read', { counts });
    case 'empty':
      return t('Nothing written yet');
  }
}

function uncheckedText(readAs: Summary['readAs']): readonly string[] {
  switch (readAs) {
    case 'whole':
      return [];
    case 'part':
      return [t('Read as a part: what a whole craft needs was not checked.')];
    case 'incomplete':
      return [t('Something that it includes could not be read: what a whole craft needs was not checked.')];
    case 'empty':
      return [t('Nothing is written here yet: there was nothing to check.')];
  }
}

import * as vscode from 'vscode';
import type { Engine, Summary } from './engine';
import { activeScript } from './language';

const { t } = vscode.l10n;

/** Counts and the pack in view, for the active craft script. */
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

  constructor(private readonly engine: Engine) {
    this.counts.name = t('Propsoff: Findings');
    this.counts.command = 'workbench.actions.view.problems';
    this.pack.name = t('Propsoff: Pack in View');
    this.pack.command = 'propsoff.pickPack';
    this.disposables = [
      this.counts,
      this.pack,
      engine.onChecked((uri) => {
        if (uri.toString() === activeScript()?.document.uri.toString()) void this.refresh();
      }),
      vscode.window.onDidChangeActiveTextEditor(() => void this.refresh()),
    ];
    void this.refresh();
  }

  dispose(): void {
    for (const disposable of this.disposables) disposable.dispose();
  }

  private async refresh(): Promise<void> {
    const uri = activeScript()?.document.uri;
    const summary = uri === undefined ? null : await this.engine.summary(uri);
    if (uri?.toString() !== activeScript()?.document.uri.toString()) return;
    if (summary === null) {
      this.counts.hide();
      this.pack.hide();
      return;
    }
    this.show(summary);
  }

  private show({ counts, packs, packInView }: Summary): void {
    const mend = counts['must-fix'];
    this.counts.text = `$(checklist) ${countsText(mend, counts.risk)}`;
    this.counts.tooltip = t('Propsoff: {mend} must-fix, {risk} risk, {note} note, {tidy} tidy', {
      ...counts,
      mend,
    });
    this.counts.accessibilityInformation = { label: this.counts.tooltip };
    this.counts.show();
    if (packInView === null) {
      this.pack.hide();
      return;
    }
    this.pack.text = `$(plug) ${packInView}`;
    this.pack.tooltip = t('Pack in view: {pack} of {packs}. Click to look at another.', {
      pack: packInView,
      packs: packs.join(', '),
    });
    this.pack.show();
  }
}

function countsText(mend: number, risk: number): string {
  return risk === 1
    ? t('{mend} to mend, 1 risk', { mend })
    : t('{mend} to mend, {risk} risks', { mend, risk });
}

import * as vscode from 'vscode';

const scheme = 'propsoff-explanation';

/** Explanations as read-only documents: nothing to save, nothing left over when the editor closes. */
export class Explanations implements vscode.TextDocumentContentProvider, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  readonly onDidChange = this.changed.event;
  private readonly closedEmitter = new vscode.EventEmitter<string>();
  /** What was shown is closed; says what it was about. */
  readonly onClosed = this.closedEmitter.event;
  private readonly closing = vscode.window.tabGroups.onDidChangeTabs(({ closed }) => {
    for (const { label, input } of closed)
      if (input instanceof vscode.TabInputWebview && label.endsWith(this.about))
        this.closedEmitter.fire(this.about);
  });
  private readonly registration = vscode.workspace.registerTextDocumentContentProvider(scheme, this);
  private story = '';
  private about = '';

  provideTextDocumentContent(): string {
    return this.story;
  }

  /** Shows a story, Markdown, beside the script; the next one takes its place. `about` is its title. */
  async show(about: string, story: string): Promise<void> {
    if (about !== this.about) this.closedEmitter.fire(this.about);
    this.story = story;
    this.about = about;
    const uri = vscode.Uri.from({ scheme, path: `/${about}` });
    this.changed.fire(uri);
    await vscode.commands.executeCommand('markdown.showPreviewToSide', uri);
  }

  dispose(): void {
    for (const one of [this.registration, this.changed, this.closedEmitter, this.closing]) one.dispose();
  }
}

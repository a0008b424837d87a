import * as vscode from 'vscode';

const scheme = 'propsoff-explanation';

/** Explanations as read-only documents: nothing to save, nothing left over when the editor closes. */
export class Explanations implements vscode.TextDocumentContentProvider, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<vscode.Uri>();
  readonly onDidChange = this.changed.event;
  private readonly registration = vscode.workspace.registerTextDocumentContentProvider(scheme, this);
  private story = '';

  provideTextDocumentContent(): string {
    return this.story;
  }

  /** Shows a story, Markdown, beside the script; the next one takes its place. `about` is its title. */
  async show(about: string, story: string): Promise<void> {
    this.story = story;
    const uri = vscode.Uri.from({ scheme, path: `/${about}` });
    this.changed.fire(uri);
    await vscode.commands.executeCommand('markdown.showPreviewToSide', uri);
  }

  dispose(): void {
    this.registration.dispose();
    this.changed.dispose();
  }
}

import { type LSPClient, LSPPlugin, Workspace } from '@codemirror/lsp-client';
import type { TransactionSpec } from '@codemirror/state';
import type { EditorView } from '@codemirror/view';
import type { OpenText, Texts } from './texts';

/** All open texts as the editor's client of the server sees them. */
export class OpenWorkspace extends Workspace {
  constructor(
    client: LSPClient,
    private readonly texts: () => Texts,
    private readonly opened: (uri: string) => Promise<OpenText | null>,
  ) {
    super(client);
  }

  override files: OpenText[] = [];

  override syncFiles() {
    return this.files.flatMap((file) => {
      const told = file.toSend();
      const view = file.getView();
      if (told !== null && view !== null) LSPPlugin.get(view)?.clear();
      return told === null ? [] : [{ file, ...told }];
    });
  }

  /** Texts are opened and closed by themselves: which of them the editor shows makes no difference. */
  override openFile(): void {}

  override closeFile(): void {}

  override updateFile(uri: string, update: TransactionSpec): void {
    this.texts().open.get(uri)?.change(update);
  }

  override async displayFile(uri: string): Promise<EditorView | null> {
    const text = await this.opened(uri);
    if (text === null) return null;
    this.texts().show(text);
    return this.texts().view;
  }
}

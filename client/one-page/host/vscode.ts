/**
 * The editor's interface, as far as the extension uses it, for this page: the build puts this file in the place of the
 * module `vscode`, so that what answers the extension's pages and commands is the same code here as in an editor.
 */
import type { URI } from 'vscode-uri';
import { pathsMeant } from '../../../server/src/workspace/path-patterns';
import { showMessage, whileWorking } from '../ask';
import { clipboard } from './clipboard';
import { commands } from './commands';
import { dialogs, lastOf } from './dialogs';
import {
  activeEditor,
  applyEdit,
  type Document,
  documentOf,
  Editor,
  openTextDocument,
  relativePath,
  setTextDocumentLanguage,
} from './documents';
import { fs, onDidDeleteFiles } from './files';
import { codeActionProviders, proofMarks } from './languages';
import { folder, keptPath, keptUri, thePage } from './page';
import {
  createWebviewPanel,
  isReadShown,
  onDidChangeTabs,
  refreshReadOnly,
  registerView,
  showReadOnly,
} from './panels';
import { statusItem } from './status';
import { Disposable, type Listener, type Range, UIKind, Uri } from './values';

export * from './values';

interface Shown {
  readonly selection?: Range;
  readonly preserveFocus?: boolean;
}

/** A text that something makes and nobody writes, such as a board's text as it would be handed over. */
interface Provider {
  provideTextDocumentContent(uri: URI): string | null | Promise<string | null>;
  readonly onDidChange?: (listener: Listener<URI>) => Disposable;
}

const providers = new Map<string, Provider>();

/** A text that is made is shown only: nothing else is asked of it. */
interface Made {
  readonly uri: URI;
}

async function providedText(uri: URI): Promise<string | null> {
  return (await providers.get(uri.scheme)?.provideTextDocumentContent(uri)) ?? null;
}

/** Shows a text that is made as Markdown, as an editor's preview does. */
export async function showPreview(uri: URI): Promise<void> {
  const text = await providedText(uri);
  if (text !== null) showReadOnly(uri.scheme, lastOf(uri), text, 'markdown');
}

export const window = {
  ...dialogs,

  get activeTextEditor(): Editor | undefined {
    return activeEditor();
  },

  get visibleTextEditors(): readonly Editor[] {
    const active = activeEditor();
    return active === undefined ? [] : [active];
  },

  async showTextDocument(what: Document | Made | URI, { selection, preserveFocus = false }: Shown = {}) {
    const uri = what instanceof Uri ? what : what.uri;
    if (providers.has(uri.scheme)) {
      await showMade(uri);
      return undefined;
    }
    const document = await openTextDocument(uri);
    const { texts, shell } = thePage();
    texts.show(
      document.text,
      selection === undefined
        ? undefined
        : { from: document.offsetAt(selection.start), to: document.offsetAt(selection.end) },
    );
    shell.at('script');
    if (!preserveFocus) texts.view.focus();
    return new Editor(document);
  },

  onDidChangeActiveTextEditor: (listener: Listener<Editor | undefined>) =>
    thePage().texts.onShown.event(() => listener(activeEditor())),
  onDidChangeTextEditorSelection: (listener: Listener<unknown>) => thePage().texts.onSelected.event(listener),
  onDidChangeVisibleTextEditors: (listener: Listener<unknown>) => thePage().texts.onShown.event(listener),

  createWebviewPanel,
  registerWebviewViewProvider(id: string, provider: { resolveWebviewView(view: unknown): void }): Disposable {
    registerView(id, 'Build Sheet', (view) => provider.resolveWebviewView(view));
    return new Disposable(() => undefined);
  },

  createStatusBarItem: (id: string) => statusItem(id, (command) => void commands.executeCommand(command)),
  setStatusBarMessage: (text: string) => void showMessage('information', text),
  withProgress: <T>({ title = '' }: { title?: string }, work: () => Promise<T>) => whileWorking(title, work),

  tabGroups: { activeTabGroup: { activeTab: undefined }, onDidChangeTabs },
};

/** A text that is made stands beside the script, and follows what it is made of. */
async function showMade(uri: URI): Promise<void> {
  const text = await providedText(uri);
  if (text !== null) showReadOnly(uri.toString(), lastOf(uri), text, 'plain');
}

export const workspace = {
  fs,
  /** What a person writes here is theirs. */
  isTrusted: true,
  workspaceFolders: [{ uri: folder, name: 'craft', index: 0 }],
  getWorkspaceFolder: (uri: URI) =>
    uri.scheme === folder.scheme ? workspace.workspaceFolders[0] : undefined,
  asRelativePath: relativePath,

  async findFiles(pattern: string | { readonly pattern: string }): Promise<readonly URI[]> {
    const isMeant = pathsMeant([typeof pattern === 'string' ? pattern : pattern.pattern]);
    return thePage().store.paths().filter(isMeant).map(keptUri);
  },

  /** Whatever becomes of a file, it has changed. */
  createFileSystemWatcher({ pattern }: { readonly pattern: string }) {
    const isMeant = pathsMeant([pattern]);
    const nothing = () => new Disposable(() => undefined);
    const onDidChange = (listener: Listener<URI>) =>
      thePage().client.onFileChanged((uri) => isMeant(keptPath(uri) ?? '') && listener(uri));
    return { onDidCreate: nothing, onDidChange, onDidDelete: nothing, dispose: () => undefined };
  },

  async openTextDocument(what: URI | { readonly language?: string; readonly content?: string }) {
    if (what instanceof Uri && providers.has(what.scheme)) return { uri: what };
    return openTextDocument(what);
  },

  get textDocuments(): readonly Document[] {
    return [...thePage().texts.open.values()].map(documentOf);
  },

  applyEdit,

  registerTextDocumentContentProvider(scheme: string, provider: Provider): Disposable {
    providers.set(scheme, provider);
    provider.onDidChange?.(async (uri) => {
      if (!isReadShown(uri.toString())) return;
      const text = await providedText(uri);
      if (text !== null) refreshReadOnly(uri.toString(), text);
    });
    return new Disposable(() => providers.delete(scheme));
  },

  /** As the extension's manifest has them at first. */
  getConfiguration: () => ({ get: (name: string, otherwise?: unknown) => settings.get(name) ?? otherwise }),

  onDidChangeTextDocument: (listener: Listener<{ document: Document; contentChanges: readonly unknown[] }>) =>
    thePage().texts.onChanged.event((text) =>
      listener({ document: documentOf(text), contentChanges: [text] }),
    ),
  onDidOpenTextDocument: (listener: Listener<Document>) =>
    thePage().texts.onOpened.event((text) => listener(documentOf(text))),
  onDidCloseTextDocument: (listener: Listener<Document>) =>
    thePage().texts.onClosed.event((text) => listener(documentOf(text))),
  /** What is written is kept at once. */
  onDidDeleteFiles,
  onDidSaveTextDocument: (listener: Listener<Document>) =>
    thePage().texts.onKept.event((text) => listener(documentOf(text))),
};

const settings = new Map<string, unknown>([['handOver.longestClipboard', 100_000]]);

export const env = { appHost: 'page', uiKind: UIKind.Web, clipboard };

/** No other extensions are here, such as that of a version control. */
export const extensions = { getExtension: () => undefined };

export const languages = {
  setTextDocumentLanguage,
  registerCodeActionsProvider: codeActionProviders.register,
  createDiagnosticCollection: () => proofMarks(),
};

export const l10n = {
  t: (text: string, slots: Readonly<Record<string, unknown>> = {}) =>
    text.replace(/\{(\w+)\}/g, (whole, name: string) => String(slots[name] ?? whole)),
};

export { commands };

import type * as vscode from 'vscode';
import type { InlayHint } from 'vscode-languageclient';
import { cardElsewhere } from '../src/bench-card';
import { registerCommands } from '../src/commands';
import { RecordingsSaid } from '../src/recordings-said';
import { SheetView } from '../src/sheet-view';
import { StatusBar } from '../src/status-bar';
import { closeMessages, showMessage } from './ask';
import { registerBuiltIns } from './built-in-commands';
import { Findings } from './findings';
import { commands } from './host/commands';
import { craftLanguage, isServed, openTextDocument } from './host/documents';
import { folder, inside, keptPath, keptUri, type Page, thePage, usePage } from './host/page';
import { Uri } from './host/values';
import { window as host } from './host/vscode';
import { checkedAgain, inlayHints } from './inlay-hints';
import { openFiles, saveFiles, takeFiles } from './kept-files';
import { openScripts } from './kept-scripts';
import { Log } from './log';
import { sanitized } from './markdown';
import { openMenu } from './menu';
import { worksOffline } from './offline';
import { PageClient } from './page-client';
import { allParts, partsSoFar } from './parts';
import { printCard } from './print-card';
import { restored } from './restored';
import { extensionsFor } from './script-editor';
import { part, Shell } from './shell';
import { Store } from './store';
import { type OpenText, Texts } from './texts';
import { chooseTheme, switchTheme } from './theme';

/** ms. An edit is kept once so long nothing more was typed; leaving the page keeps it at once. */
const pause = 250;

const log = new Log();
const store = new Store(
  () => localStorage,
  (take) => window.addEventListener('storage', ({ key, newValue }) => take(key, newValue)),
);
const shell = new Shell();
const parts = new Map(partsSoFar());

const client: PageClient = new PageClient({
  texts: () => texts,
  opened: async (uri) => (await openTextDocument(Uri.parse(uri))).text,
  newWorker,
  folder,
  log,
  sanitize: sanitized,
});
const texts: Texts = new Texts(
  part('editor'),
  (text) => [
    extensionsFor(client.lsp, isServed(text.languageId), text),
    isServed(text.languageId) ? inlayHints((range) => hintsOf(text, range)) : [],
  ],
  {
    opened: (text) => isServed(text.languageId) && client.opened(text),
    closed: (uri) => client.closed(uri),
    sync: () => client.lsp.sync(),
  },
);

function hintsOf({ uri }: OpenText, range: unknown): Promise<readonly InlayHint[] | null> {
  return client.ask('textDocument/inlayHint', { textDocument: { uri }, range });
}

async function newWorker(): Promise<Worker> {
  const program = new Blob([parts.get('server.js') ?? ''], { type: 'text/javascript' });
  const worker = new Worker(URL.createObjectURL(program));
  worker.postMessage(restored(parts.get('catalog.json') ?? '{}'));
  return worker;
}

/** What an editor gives to an extension, as far as ours uses it. */
function extensionContext(): vscode.ExtensionContext {
  const workspaceState = {
    get: (key: string) => store.remembered(key),
    update: async (key: string, value: unknown) => store.remember(key, value),
  };
  const context = {
    extensionUri: inside,
    extension: { id: 'propsoff.propsoff' },
    workspaceState,
    subscriptions: [],
  };
  return context as unknown as vscode.ExtensionContext;
}

/** What is written is told to the server soon, and kept. */
function followEdits(): void {
  const waiting = new Set<OpenText>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const keepNow = () => {
    clearTimeout(timer);
    client.lsp.sync();
    for (const text of waiting) {
      const path = keptPath(text.place);
      if (path !== null) store.write(path, text.written);
      texts.onKept.fire(text);
    }
    waiting.clear();
    store.keep();
  };
  texts.onChanged.event((text) => {
    waiting.add(text);
    clearTimeout(timer);
    timer = setTimeout(keepNow, pause);
  });
  // What was typed into a text last is kept with it, and never after it is deleted.
  texts.onClosed.event(keepNow);
  window.addEventListener('pagehide', keepNow);
  window.addEventListener('beforeunload', (event) => {
    keepNow();
    if (store.whyNotKept !== null) event.preventDefault();
  });
  document.addEventListener('visibilitychange', () => document.hidden && keepNow());
  document.addEventListener('visibilitychange', () => document.hidden || store.lookAgain());
  store.onRememberedElsewhere((key) => cardElsewhere.fire(key));
  store.onKeptTwice(
    ({ path, copy }) =>
      void showMessage(
        'warning',
        `${path} was also changed in another tab of this page. What was written there is kept as ${copy}.`,
      ),
  );
  store.onChangedElsewhere((path) => {
    const open = texts.open.get(keptUri(path).toString());
    const text = store.read(path);
    if (open !== undefined && text !== undefined && !waiting.has(open))
      open.change({ changes: { from: 0, to: open.state.doc.length, insert: text } });
    client.fileChanged(keptUri(path).toString(), text === undefined ? 'gone' : 'changed');
  });
}

function followShown(): void {
  client.onChecked((uri) => {
    if (uri.toString() === texts.active?.uri) texts.view.dispatch({ effects: checkedAgain.of(null) });
  });
  texts.onShown.event((text) => {
    shell.named(text === null ? 'No script' : (keptPath(text.place) ?? text.place.path));
    const paths = [...texts.open.values()]
      .map(({ place }) => keptPath(place))
      .filter((path) => path !== null);
    store.remember('open', { paths, shown: text === null ? null : keptPath(text.place) });
  });
}

function followButtons(): void {
  const press = (id: string, run: () => unknown) => part(id).addEventListener('click', () => void run());
  press('scripts', openScripts);
  // What was said of the text before means nothing beside another one.
  press('new', () => {
    closeMessages();
    return commands.executeCommand('propsoff.newCraftScript');
  });
  press('open', () => {
    closeMessages();
    return openFiles();
  });
  press('save', saveFiles);
  const ofThisPage = [
    { title: 'Print the Bench Card', run: printCard },
    { title: 'Close the View beside the Script', run: () => shell.tabs.closeShown() },
  ];
  press('more', () => openMenu([['This page', ofThisPage]]));
  press('theme', () => store.remember('theme', switchTheme()));
  document.addEventListener('keydown', (event) => {
    if (event.key !== 's' || !(event.ctrlKey || event.metaKey)) return;
    // The browser would save the page itself, with nothing of the scripts in it.
    event.preventDefault();
    if (document.querySelector('dialog[open]') === null) void saveFiles();
  });
  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    void takeFiles([...(event.dataTransfer?.files ?? [])]);
  });
}

/** The scripts as they were left; on the first visit, one to begin with. */
async function openAsLeft(): Promise<void> {
  const left = store.remembered('open') as { readonly paths?: unknown; readonly shown?: unknown } | undefined;
  const paths = Array.isArray(left?.paths)
    ? left.paths.filter((path) => store.read(String(path)) !== undefined)
    : [];
  const shown =
    paths.find((path) => path === left?.shown) ??
    paths[0] ??
    store.paths().find((path) => path.endsWith('.craft'));
  if (shown !== undefined) {
    for (const path of paths) if (path !== shown) await openTextDocument(keptUri(String(path)));
    await host.showTextDocument(keptUri(String(shown)), { preserveFocus: true });
    return;
  }
  const content = parts.get('client/starters/first-craft.craft') ?? '';
  await host.showTextDocument(await openTextDocument({ language: craftLanguage, content }), {
    preserveFocus: true,
  });
}

async function start(): Promise<void> {
  const remembered = store.remembered('theme');
  chooseTheme(remembered === 'light' || remembered === 'dark' ? remembered : null);
  const page: Page = { store, texts, client, shell, parts };
  usePage(page);
  shell.trouble(store.whyNotKept);
  store.onFault((why) => shell.trouble(why));
  followEdits();
  followShown();
  followButtons();
  new Findings(client, texts, part('findings'), (offset) => {
    const { active } = thePage().texts;
    if (active === null) return;
    shell.at('script');
    texts.show(active, { from: offset, to: offset });
    texts.view.focus();
  });
  const context = extensionContext();
  const said = new RecordingsSaid(context.workspaceState);
  const sheet = new SheetView(context, client, said);
  registerBuiltIns(SheetView.id);
  registerCommands(context, client, sheet, said);
  new StatusBar(client);
  await openAsLeft();
  document.documentElement.dataset.ready = '';
  for (const [name, text] of await allParts()) parts.set(name, text);
  void client.start();
  host.registerWebviewViewProvider(SheetView.id, sheet as never);
  worksOffline();
}

start().catch((error: unknown) => void showMessage('error', `The page did not start: ${String(error)}`));

import type { URI } from 'vscode-uri';
import { PageFrame } from '../frame';
import { type Tab, type TabContent, textContent } from '../tabs';
import { thePage } from './page';
import { EventEmitter, type Listener, TabInputWebview } from './values';

/** `Webview`: a page of the extension in its frame. */
class Webview {
  options: unknown;
  readonly cspSource = "'self'";

  constructor(private readonly frame: PageFrame) {}

  set html(html: string) {
    this.frame.load(html);
  }

  asWebviewUri(uri: URI): URI {
    return uri;
  }

  async postMessage(message: unknown): Promise<boolean> {
    this.frame.post(message);
    return true;
  }

  onDidReceiveMessage(listener: Listener<never>) {
    return this.frame.onSent(listener);
  }
}

/** A frame loads what it is given only once it stands on the page. */
function framed(): { readonly frame: PageFrame; readonly content: TabContent } {
  const frame = new PageFrame(thePage().parts);
  return { frame, content: { element: frame.element } };
}

const closedTabs = new EventEmitter<{ closed: readonly { label: string; input: unknown }[] }>();
export const onDidChangeTabs = closedTabs.event;

/** `createWebviewPanel`: a page of the extension in a tab beside the script. */
export function createWebviewPanel(viewType: string, title: string) {
  const { frame, content } = framed();
  const disposed = new EventEmitter<void>();
  const tab = thePage().shell.tabs.add(title, content, () => {
    disposed.fire();
    closedTabs.fire({ closed: [{ label: title, input: new TabInputWebview(viewType) }] });
  });
  return {
    viewType,
    title,
    webview: new Webview(frame),
    visible: true,
    reveal: () => tab.show(),
    dispose: () => tab.close(),
    onDidDispose: disposed.event,
  };
}

const shown = new Map<string, Tab>();

/** `registerWebviewViewProvider`: the build sheet, whose tab is always there. */
export function registerView(
  id: string,
  title: string,
  resolve: (view: { readonly webview: Webview } & Record<string, unknown>) => void,
): void {
  const { frame, content } = framed();
  shown.set(id, thePage().shell.tabs.add(title, content, null));
  resolve({
    webview: new Webview(frame),
    visible: true,
    onDidChangeVisibility: new EventEmitter<void>().event,
    onDidDispose: new EventEmitter<void>().event,
  });
}

export function showView(id: string): boolean {
  shown.get(id)?.show();
  return shown.has(id);
}

/** A text that is only read, beside the script: what a board would be given, or an explanation. */
const readOnly = new Map<string, { readonly tab: Tab; show(text: string): void }>();

export function showReadOnly(key: string, title: string, text: string, kind: 'plain' | 'markdown'): void {
  const known = readOnly.get(key);
  if (known !== undefined) {
    known.show(text);
    known.tab.rename(title);
    known.tab.show();
    return;
  }
  const { content, show } = textContent(kind);
  show(text);
  const tab: Tab = thePage().shell.tabs.add(title, content, () => {
    readOnly.delete(key);
    closedTabs.fire({ closed: [{ label: tab.title, input: new TabInputWebview('text') }] });
  });
  readOnly.set(key, { tab, show });
}

export function isReadShown(key: string): boolean {
  return readOnly.has(key);
}

export function refreshReadOnly(key: string, text: string): void {
  readOnly.get(key)?.show(text);
}

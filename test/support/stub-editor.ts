import Module from 'node:module';
import { URI, Utils } from 'vscode-uri';

/** A page in an editor, seen from its own side. */
export interface StubPanel {
  /** What it was sent. */
  readonly posted: { readonly kind: string; readonly card?: unknown }[];
  /** What it sends. */
  say: (message: unknown) => Promise<void>;
}

/** What the editor's side did to the world, and what the world is like. */
export interface World {
  isTrusted: boolean;
  clipboard: string;
  /** How the clipboard keeps a text; it may throw. */
  clipboardKeeps: (text: string) => string;
  readonly files: Map<string, string>;
  /** Why no file can be written; null: it can. */
  diskFault: string | null;
  readonly said: string[];
  script: string | null;
  saveAs: string | null;
  readonly panels: StubPanel[];
}

export const world: World = {
  isTrusted: true,
  clipboard: '',
  clipboardKeeps: (text) => text,
  files: new Map(),
  diskFault: null,
  said: [],
  script: null,
  saveAs: null,
  panels: [],
};

export function freshWorld(): World {
  world.files.clear();
  world.said.length = 0;
  world.panels.length = 0;
  return Object.assign(world, {
    isTrusted: true,
    clipboard: '',
    clipboardKeeps: (text: string) => text,
    diskFault: null,
    script: '/cfg/main.craft',
    saveAs: null,
  });
}

async function say(text: string): Promise<undefined> {
  world.said.push(text);
  return undefined;
}

function panelMade() {
  const panel: StubPanel = { posted: [], say: async () => undefined };
  world.panels.push(panel);
  return {
    onDidDispose: () => undefined,
    webview: {
      cspSource: 'https://pages.example',
      asWebviewUri: (uri: URI) => uri,
      postMessage: async (message: StubPanel['posted'][number]) => panel.posted.push(message),
      onDidReceiveMessage: (listener: StubPanel['say']) => {
        panel.say = listener;
      },
    },
  };
}

const fs = {
  async writeFile(uri: URI, bytes: Uint8Array): Promise<void> {
    if (world.diskFault !== null) throw new Error(world.diskFault);
    world.files.set(uri.path, new TextDecoder().decode(bytes));
  },
  async readFile(uri: URI): Promise<Uint8Array> {
    const text = world.files.get(uri.path);
    if (text === undefined) throw new Error('there is no such file');
    return new TextEncoder().encode(text);
  },
};

class StubEmitter<T> {
  private readonly listeners = new Set<(event: T) => void>();

  readonly event = (listener: (event: T) => void) => {
    this.listeners.add(listener);
    return { dispose: () => this.listeners.delete(listener) };
  };

  fire(event: T): void {
    for (const listener of this.listeners) listener(event);
  }
}

/** As much of the editor as handing over needs. Values are looked up when they are asked for. */
const editor = {
  EventEmitter: StubEmitter,
  Uri: { file: URI.file, joinPath: Utils.joinPath },
  window: {
    get activeTextEditor() {
      if (world.script === null) return undefined;
      return { document: { uri: URI.file(world.script), languageId: 'craft-script' } };
    },
    showInformationMessage: say,
    showWarningMessage: say,
    showErrorMessage: say,
    createWebviewPanel: panelMade,
    showQuickPick: async (items: readonly unknown[]) => items[0],
    withProgress: (_: unknown, work: () => Promise<unknown>) => work(),
    showSaveDialog: async () => (world.saveAs === null ? undefined : URI.file(world.saveAs)),
  },
  ProgressLocation: { Window: 10 },
  ViewColumn: { Active: -1, Beside: -2, One: 1 },
  workspace: {
    get isTrusted() {
      return world.isTrusted;
    },
    fs,
    getConfiguration: () => ({ get: () => 100_000 }),
    onDidDeleteFiles: () => ({ dispose: () => undefined }),
  },
  commands: { executeCommand: async () => undefined },
  l10n: {
    t: (text: string, slots: Readonly<Record<string, unknown>> = {}) =>
      text.replace(/\{(\w+)\}/g, (whole, name: string) => String(slots[name] ?? whole)),
  },
  env: {
    clipboard: {
      async writeText(text: string): Promise<void> {
        world.clipboard = world.clipboardKeeps(text);
      },
      readText: async () => world.clipboard,
    },
  },
};

/** Node looks modules up by a name; the editor's own has no file outside of it. */
interface Lookup {
  _load(name: string, ...rest: unknown[]): unknown;
}

const lookup = Module as unknown as Lookup;
const load = lookup._load;
lookup._load = (name, ...rest) => (name === 'vscode' ? editor : load.call(lookup, name, ...rest));

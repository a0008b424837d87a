import type { Browser, BrowserContext } from 'playwright-core';

/** An argument of the editor, such as `extensionDevelopmentPath`, and its value. */
export type PayloadPair = readonly [name: string, value: string];

export interface WorkbenchOptions {
  /** Loopback port; a free one if left out. */
  readonly port?: number;
  /** User settings on top of those that keep the editor quiet. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Environment variables that the extension host shall see. */
  readonly env?: Readonly<Record<string, string>>;
  /** Folder of an extension that counts as installed. */
  readonly extension?: string;
  /** A packed extension to install, as a person does it. */
  readonly package?: string;
  /** The editor's own extensions to start with, by their folders' names; all of them if left out. */
  readonly builtIn?: readonly string[];
  /** Folder that the bare address opens. */
  readonly folder?: string;
}

export interface RunningWorkbench {
  readonly origin: string;
  /** Its own folder, gone after `stop`. */
  readonly home: string;
  /** Settles when the server ends, for whatever reason. */
  readonly ended: Promise<unknown>;
  /** What the server printed up to now. */
  log(): string;
  /** Address that opens a folder. */
  address(folder: string, payload?: readonly PayloadPair[]): string;
  /** A path as the editor in the browser names it. */
  remoteUri(path: string): string;
  /** Ends every process of it and removes its folder. */
  stop(): Promise<void>;
}

export interface WindowSize {
  readonly width?: number;
  readonly height?: number;
}

/** What every process of a workbench has in its environment: the folder of that one. */
export const homeVariable: string;

export function startWorkbench(options?: WorkbenchOptions): Promise<RunningWorkbench>;
/** `show`: with its window, to watch a test. */
export function launchBrowser(options?: {
  readonly show?: boolean;
  readonly whole?: boolean;
}): Promise<Browser>;
/** An empty profile of a browser: nothing that another one keeps is in it. */
export function emptyProfile(browser: Browser, size?: WindowSize): Promise<BrowserContext>;
/** A browser of its own with an empty profile; `closeBrowser` closes both. */
export function openBrowser(size?: WindowSize): Promise<BrowserContext>;
export function closeBrowser(context: BrowserContext): Promise<void>;

/** Makes an empty folder that is gone when this process ends, if nobody removes it before. */
export function scratchFolder(name: string): string;

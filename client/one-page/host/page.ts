import type { URI } from 'vscode-uri';
import type { PageClient } from '../page-client';
import type { Shell } from '../shell';
import type { Store } from '../store';
import type { Texts } from '../texts';
import { Uri } from './values';

/** The page that the editor's interface stands for. */
export interface Page {
  readonly store: Store;
  readonly texts: Texts;
  readonly client: PageClient;
  readonly shell: Shell;
  /** What ships inside the page, by its name: `sheet.css`, `client/starters/racer.craft`. */
  readonly parts: ReadonlyMap<string, string>;
}

/** Where all scripts of this page lie, as URIs: a folder of the browser's own. */
export const folder: URI = Uri.parse('kept:/craft');
/** Where that lies which ships inside the page. */
export const inside: URI = Uri.parse('inside:/');

let held: Page | null = null;

export function usePage(page: Page): void {
  held = page;
}

export function thePage(): Page {
  if (held === null) throw new Error('the page has not started yet');
  return held;
}

/** The path of a kept text, `boards/wren.json`; null for what lies elsewhere. */
export function keptPath(uri: URI): string | null {
  const root = `${folder.path}/`;
  return uri.scheme === folder.scheme && uri.path.startsWith(root) ? uri.path.slice(root.length) : null;
}

export function keptUri(path: string): URI {
  return Uri.joinPath(folder, path);
}

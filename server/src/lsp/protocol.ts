import { NotificationType, RequestType } from 'vscode-languageserver-protocol';
import type { Level } from '../catalog/model/check';
import type { BuildSheet } from '../sheet/build-sheet';

/** What the status bar and the build sheet ask for, beside the standard protocol. */
export interface Summary {
  readonly counts: Readonly<Record<Level, number>>;
  readonly packs: readonly string[];
  readonly packInView: string | null;
  /** Whether the script describes a whole craft; a part to be included has no sheet of its own. */
  readonly isWhole: boolean;
}

export interface AboutScript {
  readonly textDocument: { readonly uri: string };
}

/** Client to server: the counts and packs of an open script; null when it is not open. */
export const summaryRequest = new RequestType<AboutScript, Summary | null, void>('propsoff/summary');

/** Client to server: the build sheet of an open script with the pack in view. */
export const sheetRequest = new RequestType<AboutScript, BuildSheet | null, void>('propsoff/sheet');

/** Client to server: the pack that the pilot wants to look at. */
export const packInViewNotification = new NotificationType<{
  readonly uri: string;
  readonly pack: string | null;
}>('propsoff/packInView');

/** Client to server: everything about the line at a position, as Markdown. */
export const explainRequest = new RequestType<
  AboutScript & { readonly position: { readonly line: number; readonly character: number } },
  string | null,
  void
>('propsoff/explain');

/** Server to client: a script has been checked again; ask for what you show of it. */
export const checkedNotification = new NotificationType<{ readonly uri: string }>('propsoff/checked');

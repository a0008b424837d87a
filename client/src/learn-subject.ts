import * as vscode from 'vscode';
import type { BoardInHand } from '../../server/src/lsp/learn-protocol';
import { plainProfile, profileFile, profileIn } from './profile-file';

/** A board of which something is said: its text as it was captured, if there is one, and where its profile is kept. */
export interface LearnSubject {
  readonly text: () => Promise<string>;
  readonly fileName: string;
  /** Of a text that is a file, or is open. */
  readonly uri: vscode.Uri | null;
  board: string | null;
  /** Whether the file's name alone leads to the board. */
  isByName: boolean;
  isNew: boolean;
}

/** The board as it stands now: its profile's file may have been changed since. */
export async function inHand(subject: LearnSubject): Promise<BoardInHand> {
  const { text, fileName, uri, board } = subject;
  const file = fileOf(subject);
  const profile = file === null ? null : await plainProfile(file);
  return { text: await text(), fileName, uri: uri?.toString() ?? null, board, profile };
}

/** Where the profile is kept; null where nobody knows the board yet, or no folder is open. */
export function fileOf({ uri, board }: LearnSubject): vscode.Uri | null {
  if (board === null) return null;
  if (uri !== null && uri.scheme !== 'untitled') return profileFile(uri, board);
  const [folder] = vscode.workspace.workspaceFolders ?? [];
  return folder === undefined ? null : profileIn(folder.uri, board);
}

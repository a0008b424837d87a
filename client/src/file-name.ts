import type * as vscode from 'vscode';

/** `wren.boardtext` of a place; empty for one without a name. */
export function nameOf({ path }: Pick<vscode.Uri, 'path'>): string {
  return path.split('/').at(-1) ?? '';
}

/** `wren` of `wren.boardtext`. */
export function withoutEnding(name: string): string {
  return name.replace(/\.[^.]*$/, '');
}

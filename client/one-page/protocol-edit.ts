import type { WorkspaceEdit } from 'vscode-languageclient';
import { WorkspaceEdit as Edit, Position, Range, Uri } from './host/values';

/** The edits of texts that the server has sent, as our client has them. */
export function editOf({ documentChanges, changes }: WorkspaceEdit): Edit {
  const edit = new Edit();
  const files = [
    ...Object.entries(changes ?? {}),
    ...(documentChanges ?? []).flatMap((one) =>
      'edits' in one ? [[one.textDocument.uri, one.edits] as const] : [],
    ),
  ];
  for (const [uri, edits] of files)
    for (const one of edits)
      if ('newText' in one) {
        const { start, end } = one.range;
        const range = new Range(
          new Position(start.line, start.character),
          new Position(end.line, end.character),
        );
        edit.replace(Uri.parse(uri), range, one.newText);
      }
  return edit;
}

import type { TextEdit as ClientEdit, DocumentRangeFormattingParams } from 'vscode-languageserver';
import { formatting } from '../../features/formatting/formatting';
import type { TextEdit } from '../../features/range';
import type { ScriptContext } from './about-script';

export function formatted(context: ScriptContext): ClientEdit[] {
  return clientEdits(context, formatting(context.snapshot));
}

export function formattedRange(
  context: ScriptContext,
  { range }: DocumentRangeFormattingParams,
): ClientEdit[] {
  const { session, snapshot } = context;
  return clientEdits(context, formatting(snapshot, session.range(snapshot.script, range)));
}

function clientEdits({ session, snapshot }: ScriptContext, edits: readonly TextEdit[]): ClientEdit[] {
  return edits.map((edit) => session.clientEdit(snapshot.script, edit));
}

import { readHandOver } from '../../catalog/model/hand-over';
import { type DrawnSheet, drawnSheet } from '../../sheet/drawn-sheet';
import { type Tryable, tryable, tryValue } from '../../sheet/try-value';
import type { SettingToTry, SheetParams, TryAnswer, ValueToTry } from '../protocol';
import type { Context } from './row';

export function sheetOf(
  { snapshot: { craft, findings, pack } }: Context,
  { handed }: SheetParams,
): DrawnSheet {
  return drawnSheet(craft, findings(), pack, typeof handed === 'string' ? readHandOver(handed) : null);
}

export function tryableAt({ snapshot }: Context, { path, pack }: SettingToTry): Tryable | null {
  return tryable(snapshot.craft, pack ?? snapshot.pack, path);
}

export function tried({ session, snapshot }: Context, { path, pack, to }: ValueToTry): TryAnswer | null {
  const { workspace } = session;
  const { uri, craft, script } = snapshot;
  const answer = tryValue(craft, pack ?? snapshot.pack, path, to, snapshot.findings(), (one) =>
    workspace.check(one),
  );
  const version = workspace.get(uri)?.version;
  if (answer === null || version === undefined) return null;
  const edits = answer.edits.map(({ start, end, text }) => ({
    range: session.clientRange(script, { start, end }),
    newText: text,
  }));
  return { ...answer, version, edits };
}

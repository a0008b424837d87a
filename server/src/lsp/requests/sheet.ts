import { readHandOver } from '../../catalog/model/hand-over';
import { boardRenderer } from '../../features/board/finding-words';
import { linesToWrite } from '../../features/lines-to-write';
import type { DocumentEdit } from '../../language/document';
import { type DrawnSheet, drawnSheet } from '../../sheet/drawn-sheet';
import { type Narrowing, narrowings } from '../../sheet/narrowing/narrowing';
import { type Tryable, tryable, tryValue } from '../../sheet/try-value';
import type { SheetParams } from '../protocol';
import type { LinesAnswer, SettingsToWrite, SettingToTry, TryAnswer, ValueToTry } from '../values-protocol';
import type { ScriptContext } from './about-script';

export function sheetOf({ snapshot }: ScriptContext, { handed }: SheetParams): DrawnSheet {
  const last = typeof handed === 'string' ? readHandOver(handed) : null;
  return drawnSheet(snapshot.craft, snapshot.findings(), snapshot.pack, last, boardRenderer(snapshot));
}

export function tryableAt({ snapshot }: ScriptContext, { path, pack }: SettingToTry): Tryable | null {
  return tryable(snapshot.craft, pack ?? snapshot.pack, path);
}

export function tried(
  { session, snapshot }: ScriptContext,
  { path, pack, to }: ValueToTry,
): TryAnswer | null {
  const { workspace } = session;
  const { uri, craft } = snapshot;
  const answer = tryValue(craft, pack ?? snapshot.pack, path, to, snapshot.findings(), (one) =>
    workspace.check(one),
  );
  const version = workspace.get(uri)?.version;
  if (answer === null || version === undefined) return null;
  return { ...answer, version, edits: asClientCounts({ session, snapshot }, answer.edits) };
}

export function narrowingOf({ snapshot: { craft, pack } }: ScriptContext): readonly Narrowing[] {
  return narrowings(craft, pack ?? craft.packs()[0] ?? null);
}

export function linesFor(
  { session, snapshot }: ScriptContext,
  { paths }: SettingsToWrite,
): LinesAnswer | null {
  const lines = linesToWrite(snapshot.craft, paths);
  const version = session.workspace.get(snapshot.uri)?.version;
  if (lines === null || version === undefined) return null;
  return { version, edits: asClientCounts({ session, snapshot }, lines.edits), at: lines.at };
}

function asClientCounts({ session, snapshot: { script } }: ScriptContext, edits: readonly DocumentEdit[]) {
  return edits.map(({ start, end, text }) => ({
    range: session.clientRange(script, { start, end }),
    newText: text,
  }));
}

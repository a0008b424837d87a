import type { Snapshot } from '../../features/snapshot';
import { drawnSheet } from '../../sheet/drawn-sheet';
import { tryable, tryValue } from '../../sheet/try-value';
import type { SettingToTry, sheetRequest, TryAnswer, tryableRequest, tryRequest } from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import type { Answers } from './on-demand';
import { answering } from './request';

export interface SheetAnswers {
  readonly sheet: Answers<typeof sheetRequest>;
  readonly tryable: Answers<typeof tryableRequest>;
  readonly tried: Answers<typeof tryRequest>;
}

/** The build sheet, and what it would say with another value. */
export function sheetAnswers(session: Session, onFault: OnServerFault): SheetAnswers {
  return {
    sheet: answering(
      session,
      onFault,
      'build sheet',
      ({ snapshot }) => drawnSheet(snapshot.craft, snapshot.findings(), snapshot.pack),
      'same',
    ),
    tryable: answering(session, onFault, 'what can be tried', ({ snapshot }, { path, pack }) =>
      tryable(snapshot.craft, pack ?? snapshot.pack, path),
    ),
    tried: answering(session, onFault, 'trying a value', ({ snapshot }, params) =>
      tried(session, snapshot, params),
    ),
  };
}

function tried(
  session: Session,
  snapshot: Snapshot,
  { path, pack, to }: SettingToTry & { readonly to: string },
): TryAnswer | null {
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

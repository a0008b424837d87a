import type { Connection } from 'vscode-languageserver';
import { countByLevel } from '../checks/order';
import { countsOfText, toldText } from '../features/board/told';
import { explainLine } from '../features/explain';
import type { Snapshot } from '../features/snapshot';
import { drawnSheet } from '../sheet/drawn-sheet';
import { tryable, tryValue } from '../sheet/try-value';
import type { Diagnostics } from './diagnostics';
import {
  explainRequest,
  packInViewNotification,
  type SettingToTry,
  type Summary,
  setHereRequest,
  sheetRequest,
  summaryRequest,
  type TryAnswer,
  tryableRequest,
  tryRequest,
} from './protocol';
import { answering } from './request';
import type { OnServerFault } from './server';
import type { Session } from './session';

/** What Propsoff's own client asks for beside the standard protocol. */
export function registerOwnRequests(
  connection: Connection,
  session: Session,
  diagnostics: Diagnostics,
  onFault: OnServerFault,
): void {
  connection.onRequest(
    summaryRequest,
    answering(
      session,
      onFault,
      'summary',
      ({ snapshot }) => ({
        counts: countsIn(session, snapshot),
        packs: snapshot.craft.packs(),
        packInView: snapshot.pack,
        isWhole: snapshot.craft.isWhole(),
      }),
      'same',
    ),
  );
  connection.onRequest(
    sheetRequest,
    answering(
      session,
      onFault,
      'build sheet',
      ({ snapshot }) => drawnSheet(snapshot.craft, snapshot.findings(), snapshot.pack),
      'same',
    ),
  );
  connection.onRequest(
    setHereRequest,
    answering(
      session,
      onFault,
      'what a line sets',
      ({ snapshot }, { position }) => {
        const { line } = session.position(snapshot.script, position);
        const here = snapshot.script.document.lineAt(line);
        const path = here?.settingPath ?? null;
        const parameter = path === null ? undefined : snapshot.catalog.parameter(path)?.name;
        if (here === undefined || path === null || parameter === undefined) return null;
        return { path, parameter, pack: here.section.pack };
      },
      'same',
    ),
  );
  connection.onRequest(
    tryableRequest,
    answering(session, onFault, 'what can be tried', ({ snapshot }, { path, pack }) =>
      tryable(snapshot.craft, pack ?? snapshot.pack, path),
    ),
  );
  connection.onRequest(
    tryRequest,
    answering(session, onFault, 'trying a value', ({ snapshot }, params) => tried(session, snapshot, params)),
  );
  connection.onRequest(
    explainRequest,
    answering(
      session,
      onFault,
      'explain',
      ({ snapshot }, { position }) => explainLine(snapshot, session.position(snapshot.script, position)),
      'same',
    ),
  );
  connection.onNotification(packInViewNotification, ({ uri, pack }) => {
    session.pickPack(uri, pack);
    diagnostics.changed(uri);
  });
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

/** Of a board's text, what its profile says counts as well. */
function countsIn({ boards, workspace: { catalog } }: Session, snapshot: Snapshot): Summary['counts'] {
  const board = boards.get(snapshot.uri);
  if (board === undefined) return countByLevel(snapshot.findings());
  return countsOfText(toldText(board.translation, snapshot.findings(), catalog));
}

import type { Connection } from 'vscode-languageserver';
import { countByLevel } from '../../checks/report/order';
import { countsOfText, toldText } from '../../features/board/told';
import { explainLine } from '../../features/hover/explain';
import type { Snapshot } from '../../features/snapshot';
import type { Diagnostics } from '../documents/diagnostics';
import {
  boardOfNotification,
  explainRequest,
  packInViewNotification,
  type Summary,
  setHereRequest,
  summaryRequest,
} from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import { answering } from './request';

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
        readAs: snapshot.craft.readAs(),
      }),
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
    explainRequest,
    answering(
      session,
      onFault,
      'explain',
      ({ snapshot }, { position }) => explainLine(snapshot, session.position(snapshot.script, position)),
      'same',
    ),
  );
  connection.onNotification(boardOfNotification, ({ uri, board }) => {
    session.boards.pick(uri, board);
    diagnostics.changed(uri);
  });
  connection.onNotification(packInViewNotification, ({ uri, pack }) => {
    session.pickPack(uri, pack);
    diagnostics.changed(uri);
  });
}

/** Of a board's text, what its profile says counts as well. */
function countsIn({ boards, workspace: { catalog } }: Session, snapshot: Snapshot): Summary['counts'] {
  const board = boards.get(snapshot.uri);
  if (board === undefined) return countByLevel(snapshot.findings());
  return countsOfText(toldText(board.translation, snapshot.findings(), catalog));
}

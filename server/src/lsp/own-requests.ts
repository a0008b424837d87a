import type { Connection } from 'vscode-languageserver';
import { countByLevel } from '../checks/order';
import { explainLine } from '../features/explain';
import { drawnSheet } from '../sheet/drawn-sheet';
import type { Diagnostics } from './diagnostics';
import {
  explainRequest,
  packInViewNotification,
  parameterAtRequest,
  sheetRequest,
  summaryRequest,
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
        counts: countByLevel(snapshot.findings()),
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
    parameterAtRequest,
    answering(
      session,
      onFault,
      'parameter at a line',
      ({ snapshot }, { position }) => {
        const { line } = session.position(snapshot.script, position);
        const path = snapshot.script.document.lineAt(line)?.settingPath ?? null;
        return path === null ? null : (snapshot.catalog.parameter(path)?.name ?? null);
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
  connection.onNotification(packInViewNotification, ({ uri, pack }) => {
    session.pickPack(uri, pack);
    diagnostics.changed(uri);
  });
}

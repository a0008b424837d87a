import { countByLevel } from '../../checks/report/order';
import { boardAnswers } from '../../features/board/answers';
import type { Snapshot } from '../../features/snapshot';
import type { AboutPlace } from '../own-message';
import type { SetHere, Summary } from '../protocol';
import type { Session } from '../session';
import type { ScriptContext } from './about-script';

export function summaryOf({ session, snapshot }: ScriptContext): Summary {
  return {
    counts: countsIn(session, snapshot),
    packs: snapshot.craft.packs(),
    packInView: snapshot.pack,
    readAs: snapshot.craft.readAs(),
  };
}

/** Of a board's text, what its profile says counts as well. */
function countsIn({ boards, workspace: { catalog } }: Session, snapshot: Snapshot): Summary['counts'] {
  const board = boards.get(snapshot.uri);
  if (board === undefined) return countByLevel(snapshot.findings());
  const { countsOfText, boardTextReport } = boardAnswers();
  return countsOfText(boardTextReport(board.layer, snapshot.findings(), catalog));
}

export function setAt({ session, snapshot }: ScriptContext, { position }: AboutPlace): SetHere | null {
  const { line } = session.position(snapshot.script, position);
  const here = snapshot.script.document.lineAt(line);
  const path = here?.settingPath ?? null;
  const parameter = path === null ? undefined : snapshot.catalog.parameter(path)?.name;
  if (here === undefined || path === null || parameter === undefined) return null;
  return { path, parameter, pack: here.section.pack };
}

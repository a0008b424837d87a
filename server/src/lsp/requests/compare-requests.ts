import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import { CraftView } from '../../craft/view';
import { type CheckedSide, type Comparison, comparing } from '../../sheet/compare/compare';
import { isTooLong } from '../documents/long-documents';
import { nextTurn } from '../documents/turn';
import type { ComparedSide, compareRequest } from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import type { Answers } from './on-demand';
import { failed, readInFull } from './request';

/** Two tunes side by side. The work pauses after each setting, so that keystrokes are not kept waiting. */
export function compareAnswer(session: Session, onFault: OnServerFault): Answers<typeof compareRequest> {
  return async ({ before, after }, token) => {
    try {
      const one = await sideOf(session, before, null, token);
      const other = one === null ? null : await sideOf(session, after, one.pack, token);
      return one === null || other === null ? null : await compared(session, one, other, token);
    } catch (error) {
      return failed(onFault, 'comparing', error);
    }
  };
}

async function compared(
  { workspace }: Session,
  before: CheckedSide,
  after: CheckedSide,
  token: CancellationToken,
): Promise<Comparison | ResponseError<void>> {
  const work = comparing(before, after, (craft) => workspace.check(craft));
  while (!token.isCancellationRequested) {
    const step = work.next();
    if (step.done === true) return step.value;
    await new Promise<void>(nextTurn);
  }
  return new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
}

/** A copy of its own, which stays as it is while the work pauses. */
async function sideOf(
  session: Session,
  { uri, text, name, pack }: ComparedSide,
  likePack: string | null,
  token: CancellationToken,
): Promise<CheckedSide | null> {
  const { workspace } = session;
  if (text !== null && isTooLong(text.length)) return null;
  if (text === null) await readInFull(session, uri, token);
  const open = text === null ? session.snapshot(uri) : undefined;
  if (text === null && open === undefined) return null;
  const craft = open === undefined ? await workspace.detached(uri, text ?? '') : open.craft.copied();
  const packs = craft.packs();
  const wanted = [pack, open?.pack ?? likePack].find((one) => one !== null && packs.includes(one));
  const view = new CraftView(craft, wanted ?? packs[0] ?? null);
  return { craft, pack: view.pack, findings: workspace.check(craft), file: name };
}

import type { CancellationToken } from 'vscode-languageserver';
import { CraftView } from '../../craft/view';
import { withAskedFirst } from '../../sheet/asked-first';
import { type CheckedSide, type Comparison, comparing } from '../../sheet/compare/compare';
import { type Variant, variantCraft, variantsOf } from '../../sheet/variants';
import { stopIfCancelled } from '../cancelled';
import { isTooLong } from '../documents/long-documents';
import { nextTurn } from '../documents/turn';
import type { ComparedSide, ComparedSides } from '../protocol';
import type { Session } from '../session';
import { readInFull, type ScriptContext } from './about-script';
import type { Services } from './row';

/** Two tunes side by side. The work pauses after each setting, so that keystrokes are not kept waiting. */
export async function comparison(
  { session }: Services,
  { before, after }: ComparedSides,
  token: CancellationToken,
): Promise<Comparison | null> {
  const one = await sideOf(session, before, null, token);
  const other = one === null ? null : await sideOf(session, after, one.pack, token);
  if (one === null || other === null) return null;
  const work = comparing(one, other, (craft) => session.workspace.check(craft));
  for (;;) {
    stopIfCancelled(token);
    const step = work.next();
    if (step.done === true) return after.otherwise === null ? step.value : withAskedFirst(step.value);
    await new Promise<void>(nextTurn);
  }
}

/** A copy of its own, which stays as it is while the work pauses. */
async function sideOf(
  session: Session,
  { uri, text, name, pack, otherwise }: ComparedSide,
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
  const inView = wanted ?? packs[0] ?? null;
  const held = otherwise == null ? craft : variantCraft(craft, inView, [otherwise]);
  return held === null ? null : { craft: held, pack: inView, findings: workspace.check(held), file: name };
}

export function variantsToCompare({ snapshot: { craft, pack } }: ScriptContext): readonly Variant[] {
  return variantsOf(new CraftView(craft, pack ?? craft.packs()[0] ?? null));
}

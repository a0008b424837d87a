import type { CraftView } from '../../craft/view';
import { capturedPack } from './parameter-path';

/** The paths that a catalogue name stands for on this craft, with the member in each. */
export function pathsOf(
  view: CraftView,
  name: string,
): readonly { readonly path: string; readonly member: string | null }[] {
  const at = name.indexOf('.<');
  if (at < 0) return [{ path: name, member: null }];
  const collection = name.slice(0, at);
  const placeholder = name.slice(at + 1, name.indexOf('>', at) + 1);
  // A board holds one pack's settings at a time: those of the pack in view.
  if (collection === 'pack') {
    if (view.pack === null) return [];
    const own = name.replace(placeholder, view.pack);
    const captured = name.replace(placeholder, capturedPack);
    // What the pack leaves open stays as the board's text has it.
    return [{ path: !view.isSet(own) && view.isSet(captured) ? captured : own, member: null }];
  }
  return view.members(collection).map((member) => ({ path: name.replace(placeholder, member), member }));
}

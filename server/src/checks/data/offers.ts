import type { CraftView } from '../../craft/view';
import { chemistryInView } from '../../figures/pack-in-view';
import { freeChannel } from '../rules/obey/free-channel';
import { endPart, partText } from '../rules/obey/switch-table';
import { freePortFor } from '../rules/wire/port-users';

/**
 * What a fix can put in beside values of the craft, by the words of its slot. `set`: the setting that is written.
 * Null where there is nothing to offer: the fix is not offered then.
 */
const offers: ReadonlyMap<string, (view: CraftView, set: string) => string | null> = new Map([
  ['free channel', (view: CraftView) => freeChannel(view)?.toString() ?? null],
  ['free port', (view: CraftView, set: string) => freePortFor(view, set)],
  ['upper part', upperPart],
  ['warn cell', (view: CraftView) => (chemistryInView(view) ?? usualChemistry(view))?.warn ?? null],
]);

/** What a slot offers; undefined where its words are no offer. */
export function offered(slot: string, view: CraftView, set: string): string | null | undefined {
  const offer = offers.get(slot);
  if (offer !== undefined) return offer(view, set);
  const [, path = '', change, word = ''] = listSlot.exec(slot) ?? [];
  return change === undefined ? undefined : changedList(view, path, change, word);
}

/** Whether a slot offers something, and for a list of which setting. */
export function offeredOf(slot: string): { readonly list: string | null } | null {
  if (offers.has(slot)) return { list: null };
  const [, path] = listSlot.exec(slot) ?? [];
  return path === undefined ? null : { list: path };
}

/** `arming.needs with position-fix`, `arming.needs without position-fix`. */
const listSlot = /^([a-z][\w.<>-]*) (with|without) ([\w.<>-]+)$/;

/** The list with a word more or less; of a path, the word that it is set to. Null where nothing is left. */
function changedList(view: CraftView, path: string, change: string, named: string): string | null {
  const word = named.includes('.') ? view.word(named) : named;
  const words = view.words(path);
  if (word === null || words === null) return null;
  const others = words.filter((one) => one !== word);
  const changed = change === 'with' ? [...others, word] : others;
  return changed.length === 0 ? null : `[${changed.join(', ')}]`;
}

/** The upper end of a switch's travel. */
function upperPart(view: CraftView): string | null {
  const part = endPart(view, 'high');
  return part === null ? null : partText(view, part);
}

/** Most packs of small craft are of this chemistry. */
function usualChemistry({ catalog }: CraftView) {
  return catalog.chemistries.get('lipo');
}

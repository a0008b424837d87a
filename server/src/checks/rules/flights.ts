import { CraftView } from '../../craft/view';

/** A flight with the craft as it was flown: with the pack that was in. */
export interface Flight {
  readonly name: string;
  /** null where the note names no pack, and the craft has more or none. */
  readonly pack: string | null;
  readonly view: CraftView;
  /** `2026-05-14` */
  readonly date: string | null;
}

export function flights(view: CraftView): readonly Flight[] {
  return view.members('flight').map((name) => {
    const path = `flight.${name}.pack`;
    const packs = view.craft.packs();
    const only = packs.length === 1 && !view.isSet(path) ? (packs[0] ?? null) : null;
    const pack = view.word(path) ?? only;
    return { name, pack, view: new CraftView(view.craft, pack), date: dateOf(view, `flight.${name}.date`) };
  });
}

export function dateOf(view: CraftView, path: string): string | null {
  const value = view.value(path);
  return value?.kind === 'date' ? value.value : null;
}

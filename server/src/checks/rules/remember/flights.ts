import { CraftView } from '../../../craft/view';
import type { CodeRule, RuleFinding } from '../../rule';

/** A flight with the craft as it was flown: with the pack that was in. */
export interface Flight {
  readonly name: string;
  /** null where the note names no pack, and the craft has more or none. */
  readonly pack: string | null;
  readonly view: CraftView;
}

export function flights(view: CraftView): readonly Flight[] {
  return view.members('flight').map((name) => flightNamed(view, name));
}

/** A rule about each flight by itself. `of`: what there is to say of one; null: nothing. */
export function perFlight(
  id: string,
  of: (view: CraftView, flight: Flight) => Omit<RuleFinding, 'id'> | null,
): CodeRule {
  return {
    ids: [id],
    scope: 'craft',
    each: 'flight',
    check(view, report, name) {
      const finding = of(view, flightNamed(view, name));
      if (finding !== null) report({ id, ...finding });
    },
  };
}

export function flightNamed(view: CraftView, name: string): Flight {
  const path = `flight.${name}.pack`;
  const packs = view.craft.packs();
  const only = packs.length === 1 && !view.isSet(path) ? (packs[0] ?? null) : null;
  const pack = view.word(path) ?? only;
  return { name, pack, view: new CraftView(view.craft, pack) };
}

/** `2026-05-14`; null where the note tells no date. */
export function flightDate(view: CraftView, name: string): string | null {
  return dateOf(view, `flight.${name}.date`);
}

export function dateOf(view: CraftView, path: string): string | null {
  const value = view.value(path);
  return value?.kind === 'date' ? value.value : null;
}

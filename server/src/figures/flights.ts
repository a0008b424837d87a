import type { CraftView } from '../craft/view';

/** The pack that was in on a flight; null where its note names none, and the craft has more or none. */
export function packFlown(view: CraftView, flight: string): string | null {
  const path = `flight.${flight}.pack`;
  if (view.isSet(path)) return view.word(path);
  const packs = view.craft.packs();
  return packs.length === 1 ? (packs[0] ?? null) : null;
}

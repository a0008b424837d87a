import { inBase } from '../catalog/known-parameter';
import type { Craft } from '../craft/craft';
import type { CraftView } from '../craft/view';
import { flyingMass } from '../figures/mass';
import { settingEdits, whatIf } from './what-if';

/** What is held otherwise. */
export const [load, air] = ['craft.payload', 'craft.air-temperature'] as const;
const wind = 'craft.wind';

/** One setting held otherwise, to be seen side by side with what the script says, which stays as it is. */
export interface Variant {
  /** `without the load of 35 g` */
  readonly words: string;
  readonly path: string;
  /** As a script writes it; null where the pilot is to say how much. */
  readonly to: string | null;
}

/** Null for a craft that carries none. */
export function withoutLoad(view: CraftView): Variant | null {
  const carried = view.quantity(load);
  if (carried === null || carried <= 0) return null;
  return { words: `without the load of ${view.short(carried, 'g')}`, path: load, to: '0 g' };
}

/** Air, and a pack that is not kept warm, as cold as the catalogue has it; null where it is that cold already. */
export function inTheCold(view: CraftView): Variant | null {
  const now = view.quantity(air);
  const cold = view.catalog.packs?.cold.usual;
  if (now === null || cold === undefined || now <= inBase(cold)) return null;
  return { words: `in the cold, at ${cold}`, path: air, to: cold };
}

/** A tenth of what is in the air, to one digit: enough to be felt, and carried by most that flies at all. */
function withLoad(view: CraftView): Variant {
  const mass = flyingMass(view);
  if (mass === null) return { words: 'with a load', path: load, to: null };
  const to = view.short(Number((mass / 10).toPrecision(1)), 'g');
  return { words: `with a load of ${to}`, path: load, to };
}

/** In the first of the usual winds, or without the one that blows; null where none is usual. */
function inWind(view: CraftView): Variant | null {
  const now = view.quantity(wind) ?? 0;
  if (now > 0) return { words: `without the wind of ${view.short(now, 'm/s')}`, path: wind, to: '0 m/s' };
  const usual = view.catalog.commonValues.get(wind)?.values?.[0]?.value;
  return usual === undefined ? null : { words: `in a wind of ${usual}`, path: wind, to: usual };
}

/** What a pilot may want to see side by side: with and without a load, in the cold, and in a wind. */
export function variantsOf(view: CraftView): readonly Variant[] {
  const other = withoutLoad(view) ?? withLoad(view);
  return [other, inTheCold(view), inWind(view)].flatMap((variant) => variant ?? []);
}

/** The craft with all of them; null where one can't be written. */
export function variantCraft(
  craft: Craft,
  pack: string | null,
  settings: readonly { readonly path: string; readonly to: string }[],
): Craft | null {
  let varied = craft;
  for (const { path, to } of settings) {
    const edits = settingEdits(varied, pack, path, to);
    if (edits === null) return null;
    varied = whatIf(varied, edits);
  }
  return varied;
}

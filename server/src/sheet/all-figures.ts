import type { Craft } from '../craft/craft';
import { CraftView } from '../craft/view';
import { figureOf, figureSources } from '../figures';
import type { Figure } from '../figures/figure';

/** Every figure that can be computed with one pack; null where the craft names none. */
export interface PackFigures {
  readonly pack: string | null;
  readonly figures: readonly Figure[];
}

/** All figures of a craft, for programs: the numbers behind the sheet, pack by pack. */
export function allFigures(craft: Craft): readonly PackFigures[] {
  return craft.packsOrNone().map((pack) => {
    const view = new CraftView(craft, pack);
    return { pack, figures: figureSources.flatMap(({ id }) => figureOf(view, id) ?? []) };
  });
}

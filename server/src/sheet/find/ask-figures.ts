import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { figureOf, figureSources } from '../../figures';

/** Asks for every figure once, with pauses in between: checks and comparisons then only read them. */
export function* askFigures(craft: Craft): Generator<void> {
  for (const pack of craft.packsOrNone())
    for (const { id } of figureSources) {
      figureOf(new CraftView(craft, pack), id);
      yield;
    }
}

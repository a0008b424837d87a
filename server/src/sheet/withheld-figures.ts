import type { Craft } from '../craft/craft';
import { CraftView } from '../craft/view';
import { ofAxes } from '../figures/axis-names';
import type { Instead } from '../figures/substitute';
import { withheldIn } from '../figures/withheld';

/** A figure that can't be computed with any pack, or with some. */
export interface WithheldFigure {
  readonly id: string;
  readonly title: string;
  /** The packs with which it is not known; null: with all of them, or there is none. */
  readonly packs: readonly string[] | null;
  /** Settings that would make it appear; one of a pack by its name. */
  readonly needs: readonly string[];
  /** What may be written in place of some of them. */
  readonly instead: readonly Instead[];
  /** Settings that are written and can't be read. */
  readonly refused: readonly string[];
  /** Why, in a sentence, where it is for anything else but what is missing. */
  readonly because: string | null;
}

/** What checks judge a craft by; without them its findings are silent about whether it flies. */
export const judgedBy: ReadonlySet<string> = new Set([
  'hover-throttle',
  'thrust-to-weight',
  'minutes-to-landing',
  'full-motor-current',
  'hover-tone',
  ...ofAxes('phase-margin'),
]);

/**
 * All that are withheld of a whole craft, or of what a board's text alone says, in the order of the sheet, with what they need for all packs together.
 * `ids`: of these only.
 */
export function withheldFigures(craft: Craft, ids?: ReadonlySet<string>): readonly WithheldFigure[] {
  if (!craft.isWhole() && !craft.root.isBoardText) return [];
  const all = new Map<string, WithheldGroup>();
  for (const pack of craft.packsOrNone()) {
    for (const { id, title, needs, instead, refused, because } of withheldIn(
      new CraftView(craft, pack),
      ids,
    )) {
      const known = all.get(id) ?? { id, title, with: [], needs: new Set(), instead, refused, because };
      all.set(id, known);
      if (pack !== null) known.with.push(pack);
      known.because ??= because;
      for (const path of needs) known.needs.add(path);
    }
  }
  const count = craft.packs().length;
  return [...all.values()].map(({ with: packs, needs, ...one }) => ({
    ...one,
    packs: packs.length === count ? null : packs,
    needs: [...needs],
  }));
}

interface WithheldGroup {
  readonly id: string;
  readonly title: string;
  readonly with: string[];
  readonly needs: Set<string>;
  readonly instead: readonly Instead[];
  readonly refused: readonly string[];
  because: string | null;
}

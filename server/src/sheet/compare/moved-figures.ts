import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { figureOf, figureSources } from '../../figures';
import { betterWay } from '../../figures/better';
import type { Figure } from '../../figures/figure';
import { figureText, intervalText } from '../which-pack';

/** A figure as it is shown: "11.2 ms", and from low to high where they differ. */
export interface FigureReading {
  readonly text: string;
  readonly span: string | null;
  /** In the figure's unit. */
  readonly likely: number;
}

/** A figure that is not the same before and after, as far as it is shown. */
export interface MovedFigure {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  /** One for each pack that is looked at; null where it can't be computed. */
  readonly packs: readonly {
    readonly pack: string | null;
    readonly before: FigureReading | null;
    readonly after: FigureReading | null;
  }[];
  /** Null where it depends on what the pilot wants. */
  readonly turn: 'better' | 'worse' | null;
  /** The largest move as a share of the larger value, 0 to 1. */
  readonly size: number;
}

/** A pack before and the one that takes its place after: the same, or another. */
export type PackPair = readonly [before: string | null, after: string | null];

/** What moves from one craft to another: what gets worse first, then by size. */
export function movedFigures(
  before: Craft,
  after: Craft,
  pairs: readonly PackPair[],
): readonly MovedFigure[] {
  const views = pairs.map(
    ([one, other]) => [new CraftView(before, one), new CraftView(after, other)] as const,
  );
  return figureSources
    .flatMap(({ id, title, unit, isFault = false }): readonly MovedFigure[] => {
      const packs = views.map(([one, other]) => ({
        pack: other.pack,
        before: reading(figureOf(one, id)),
        after: reading(figureOf(other, id)),
      }));
      if (packs.every(({ before: was, after: is }) => was?.text === is?.text)) return [];
      const size = Math.max(...packs.map(({ before: was, after: is }) => sizeOf(was, is, unit)));
      return [{ id, title, unit, packs, turn: isFault ? faultTurn(packs) : turnOf(id, packs), size }];
    })
    .sort((one, other) => rank(one) - rank(other) || other.size - one.size);
}

function reading(figure: Figure | null): FigureReading | null {
  return figure === null
    ? null
    : { text: figureText(figure), span: intervalText(figure), likely: figure.likely };
}

/** Of decibels the share by which what they stand for moves. */
function sizeOf(was: FigureReading | null, is: FigureReading | null, unit: string): number {
  if (was === null || is === null) return was === is ? 0 : 1;
  if (unit === 'dB') return 1 - 10 ** (-Math.abs(was.likely - is.likely) / 20);
  const larger = Math.max(Math.abs(was.likely), Math.abs(is.likely));
  return larger === 0 ? 0 : Math.min(1, Math.abs(was.likely - is.likely) / larger);
}

/** Worse for one pack is worse. */
function turnOf(id: string, packs: MovedFigure['packs']): MovedFigure['turn'] {
  const way = betterWay(id);
  if (way === null) return null;
  const turns = packs.flatMap(({ before, after }) => {
    if (before === null || after === null || before.text === after.text) return [];
    return [after.likely > before.likely === (way === 'more') ? ('better' as const) : ('worse' as const)];
  });
  if (turns.includes('worse')) return 'worse';
  return turns.length === 0 ? null : 'better';
}

/** A fault that comes is worse, one that goes is better; one that stays is neither. */
function faultTurn(packs: MovedFigure['packs']): MovedFigure['turn'] {
  if (packs.some(({ before, after }) => before === null && after !== null)) return 'worse';
  return packs.some(({ before, after }) => before !== null && after === null) ? 'better' : null;
}

function rank({ turn }: MovedFigure): number {
  return turn === 'worse' ? 0 : 1;
}

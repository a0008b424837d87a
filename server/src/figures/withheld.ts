import { type CraftView, viewQuery } from '../craft/view';
import type { FigureSource } from './figure';
import { figureOf, figureSource, sourcesOf } from './index';
import { insteadOfSize } from './motor-size';
import type { Instead, Substitute } from './substitute';

/** A figure that can't be computed for a craft with the view's pack, and what would make it appear. */
export interface Withheld {
  readonly id: string;
  readonly title: string;
  /** Settings to write; empty where none is missing. */
  readonly needs: readonly string[];
  /** What may be written in place of some of them. */
  readonly instead: readonly Instead[];
  /** Settings that are written and can't be read. */
  readonly refused: readonly string[];
  /** Why, in a sentence, where it is for anything else but what is missing. */
  readonly because: string | null;
}

/** All that are withheld, in the order of the build sheet. `ids`: of these only. */
export function withheldIn(view: CraftView, ids?: ReadonlySet<string>): readonly Withheld[] {
  const asking = view.anew();
  return sourcesOf(view).flatMap(({ id }) => {
    // Most figures are known: nothing is kept of why they might not be.
    if (ids?.has(id) === false || figureOf(asking, id) !== null) return [];
    return withheldNamed(view, id) ?? [];
  });
}

const withheldNamed = viewQuery('withheld', (view, id: string): Withheld | null => {
  const source = figureSource(id);
  return source === undefined || source.isFault === true ? null : withheldOf(view, source);
});

function withheldOf(view: CraftView, source: FigureSource): Withheld | null {
  const { id, title } = source;
  if (source.concerns?.(view) === false) return null;
  const asking = view.anew();
  if (figureOf(asking, id) !== null) return null;
  const { missing, refused } = asking.lacking;
  const instead = insteadOf(view, missing);
  if (refused.length > 0)
    return { id, title, needs: missing, instead, refused, because: refusedText(view, refused) };
  if (missing.length > 0) return { id, title, needs: missing, instead, refused, because: null };
  const because = source.whyNot?.(view) ?? null;
  return because === null ? null : { id, title, needs: [], instead: [], refused, because };
}

const substitutes: readonly Substitute[] = [insteadOfSize];

function insteadOf(view: CraftView, needs: readonly string[]): readonly Instead[] {
  return substitutes.flatMap(({ of, by }) => {
    const asked = of.filter((path) => needs.includes(path));
    if (asked.length === 0) return [];
    return by.flatMap((way) => {
      const write = way.write.filter((path) => !view.isSet(path));
      return write.length === 0 ? [] : [{ ...way, of: asked, write }];
    });
  });
}

function refusedText(view: CraftView, paths: readonly string[]): string {
  const isEmpty = (path: string) => {
    const statement = view.setting(path)?.origin.line.statement;
    return statement?.kind === 'setting' && statement.value === null;
  };
  const [empty, wrong] = [paths.filter(isEmpty), paths.filter((path) => !isEmpty(path))];
  const sentences = [
    empty.length === 0 ? [] : [`Fill in ${empty.join(' and ')}.`],
    wrong.length === 0
      ? []
      : [
          `${wrong.join(' and ')} can’t be read as written: mend ${wrong.length === 1 ? 'its line' : 'their lines'} first.`,
        ],
  ];
  return sentences.flat().join(' ');
}

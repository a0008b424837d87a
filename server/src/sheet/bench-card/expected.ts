import type { BenchStep } from '../../catalog/model/bench-card';
import { listed } from '../../checks/report/listed';
import type { Craft } from '../../craft/craft';
import type { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { uncapitalised } from '../../units/capitals';
import { withheldOf } from '../not-known';
import { figureText, intervalText } from '../which-pack';
import { withheldFigures } from '../withheld-figures';
import type { CardFigure } from './card';
import type { StepView } from './step-words';

/** Something expected, with every pack that the step is done with. */
export interface ExpectedFigure {
  readonly isSame: boolean;
  /** One for each pack; null where it is not known. */
  readonly figures: readonly (CardFigure | null)[];
}

export function figuresFor(
  looked: readonly StepView[],
  { words, is }: { readonly words: string; readonly is: string },
): ExpectedFigure {
  const figures = looked.map(({ view }) => figureFor(view, words, is));
  return { figures, isSame: new Set(figures.map((figure) => JSON.stringify(figure))).size < 2 };
}

function figureFor(view: CraftView, words: string, is: string): CardFigure | null {
  if (!is.startsWith('figure.')) {
    const text = view.written(is);
    return text === null ? null : { words, text, span: null };
  }
  const figure = figureOf(view, is.slice('figure.'.length));
  return figure === null ? null : { words, text: figureText(figure), span: intervalText(figure) };
}

/**
 * What to write for what is expected and not known, a sentence for each reason. A part of a craft is asked for nothing.
 * `told`: reasons that earlier steps gave.
 */
export function unknownOf(
  craft: Craft,
  looked: readonly StepView[],
  expected: NonNullable<BenchStep['expected']>,
  told: Set<string>,
): readonly string[] {
  if (!craft.isWhole()) return [];
  const byReason = new Map<string, string[]>();
  for (const { words, is } of expected) {
    const without = looked.filter(({ view }) => figureFor(view, words, is) === null);
    const [reason] = without.length === 0 ? [] : reasonsFor(craft, without, is);
    if (reason === undefined) continue;
    const packs = without.flatMap(({ view }) => view.variant ?? []);
    const what = without.length < looked.length ? `${words}, with ${listed(packs)}` : words;
    byReason.set(reason, [...(byReason.get(reason) ?? []), what]);
  }
  return [...byReason].map(([reason, what]) => {
    const isTold = told.has(reason);
    told.add(reason);
    const [first = '', ...others] = what;
    const all = listed([first, ...others.map(uncapitalised)]);
    return `${all}: ${isTold ? 'not known yet, for what is missing above.' : `not known yet. ${reason}`}`;
  });
}

function reasonsFor(craft: Craft, looked: readonly StepView[], is: string): readonly string[] {
  if (is.startsWith('figure.'))
    return withheldOf(craft, withheldFigures(craft, new Set([is.slice('figure.'.length)]))).map(
      ({ reason }) => reason,
    );
  return looked.some(({ view }) => view.isSet(is)) ? [] : [`Write ${is}.`];
}

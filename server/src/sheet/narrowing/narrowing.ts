import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { ofAxes } from '../../figures/axis-names';
import type { Figure } from '../../figures/figure';
import { stepsOf } from '../../language/path-text';
import { whatIf } from '../what-if';
import { intervalText } from '../which-pack';
import { type Measurement, measurementsFor } from './measurements';

/** The one thing to measure that makes a figure surest, and what comes of it. */
export interface Narrowing {
  /** Of the figure. */
  readonly id: string;
  readonly title: string;
  readonly pack: string | null;
  /** The whole of it in a sentence. */
  readonly text: string;
  /** How it is measured. */
  readonly how: string;
  /** Where the reading is written down. */
  readonly path: string;
  /** What was tried for it: what is likely. */
  readonly tried: string;
  /** The span as it is and as it would be, in the figure's unit. */
  readonly before: string;
  readonly after: string;
}

/** What a pilot decides by. */
const keyFigures = [
  'hover-throttle',
  'thrust-to-weight',
  'minutes-to-landing',
  'hover-tone',
  ...ofAxes('phase-margin'),
];

/** A span that shrinks by less is not worth the trouble. */
const leastShrink = 0.1;

/**
 * For each key figure that is not sure, with a pack in view: every measurement is really tried, as a line that holds
 * what is likely, and the figures are asked anew. Costs several sheets: only for who asks.
 */
export function narrowings(craft: Craft, pack: string | null): readonly Narrowing[] {
  if (!craft.isWhole()) return [];
  const view = new CraftView(craft, pack);
  const unsure = keyFigures
    .flatMap((id) => figureOf(view, id) ?? [])
    .filter((one) => intervalText(one) !== null);
  if (unsure.length === 0) return [];
  const tried = measurementsFor(view, freeFlight(craft)).flatMap((one) => triedOn(view, one) ?? []);
  return unsure.flatMap((figure) => {
    const ways = tried.flatMap((one) => {
      const after = figureOf(one.measured, figure.id);
      return after === null ? [] : [{ ...one, after }];
    });
    const [best] = ways.sort((one, other) => widthOf(one.after) - widthOf(other.after));
    if (best === undefined || widthOf(best.after) > (1 - leastShrink) * widthOf(figure)) return [];
    return [narrowingOf(view, figure, best)];
  });
}

/** A measurement as if it had been made. */
interface TriedMeasurement {
  readonly measurement: Measurement;
  /** As a script writes it. */
  readonly value: string;
  /** The craft with it. */
  readonly measured: CraftView;
}

/** With one more line, which holds what is likely; null where that can't be told. */
function triedOn(view: CraftView, measurement: Measurement): TriedMeasurement | null {
  const { path, likely, unit } = measurement;
  const amount = likely(view.anew());
  if (amount === null || !Number.isFinite(amount)) return null;
  const { craft, variant } = view;
  const value = view.exact(amount, unit);
  const steps = stepsOf(path);
  const lines = [
    '',
    `[${steps.slice(0, -1).join('.')}]`,
    `${steps.at(-1)} = ${value}`,
    ...(steps[0] === 'flight' && variant !== null ? [`pack = ${variant}`] : []),
  ];
  const { document } = craft.root;
  const line = document.lineCount - 1;
  const end = { line, character: document.lineAt(line)?.text.length ?? 0 };
  const measured = new CraftView(whatIf(craft, [{ start: end, end, text: lines.join('\n') }]), variant);
  return { measurement, value, measured };
}

function freeFlight(craft: Craft): string {
  const taken = craft.members('flight');
  for (let number = 1; ; number += 1) if (!taken.includes(`measured-${number}`)) return `measured-${number}`;
}

/** An end that is told in words lies beyond all numbers. */
function widthOf({ low, high, lowWords, highWords }: Figure): number {
  const isOpen = lowWords !== undefined || highWords !== undefined;
  return high - low + (isOpen ? 1e9 : 0);
}

function narrowingOf(
  { catalog, pack }: CraftView,
  before: Figure,
  { after, value, measurement: { what, within, path, how } }: TriedMeasurement & { readonly after: Figure },
): Narrowing {
  const [was, is] = [before, after].map((figure) => {
    const span = intervalText(figure) ?? String(figure.likely);
    return figure.unit === '' ? span : `${span} ${figure.unit}`;
  });
  return {
    id: before.id,
    title: before.title,
    pack,
    text: `${before.title}: ${what}, ${within}, and the span falls from ${was} to ${is}.`,
    how: how ?? catalog.parameter(path)?.parameter.prove ?? '',
    path,
    tried: value,
    before: was ?? '',
    after: is ?? '',
  };
}

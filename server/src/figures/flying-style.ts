import type { CraftView } from '../craft/view';
import type { Estimate } from './uncertain';

export const flyingStyles = ['gentle', 'freestyle', 'race'] as const;

export type FlyingStyle = (typeof flyingStyles)[number];

/**
 * Mean power of a style as a multiple of a hover's. Inferred from motor commands and rotor speeds of piloted flights
 * (M. Bosello et al., Race Against the Machine, arXiv 2311.02667, data of 2023): 1.12 in the median of gentle circuits;
 * on a race track 4.3, 2.9 if thrust goes with the command and 8.5 if the command is the rotor's speed. Of freestyle
 * there is no figure: it lies between the two. No paper was found that states such a mean power.
 */
const multiples: Readonly<Record<FlyingStyle, Estimate>> = {
  gentle: { likely: 1.1, low: 1, high: 1.2 },
  freestyle: { likely: Math.sqrt(2 * 3), low: 2, high: 3 },
  race: { likely: 4.3, low: 2.9, high: 8.5 },
};

/** Thrust-to-weight of the craft that the multiple of a race was inferred from, and how the multiple goes with it. */
const raced = { thrustToWeight: 7, power: 0.75 };

/**
 * How many times the power of a hover a style takes on average, of a craft of a thrust-to-weight ratio above 0. A craft
 * that can do little more than hover can't be flown harder: freestyle takes at most what a race does, and no style less
 * than gentle flying.
 */
export function powerMultiple(style: FlyingStyle, thrustToWeight: number): Estimate {
  const { gentle, freestyle, race } = multiples;
  if (style === 'gentle') return gentle;
  const scale = (thrustToWeight / raced.thrustToWeight) ** raced.power;
  const each = (at: keyof typeof gentle & ('likely' | 'low' | 'high')) => {
    const racing = Math.max(gentle[at], scale * race[at]);
    return style === 'race' ? racing : Math.min(racing, freestyle[at]);
  };
  return { likely: each('likely'), low: each('low'), high: each('high') };
}

/** What a purpose says of how a craft is flown, where nothing else does. */
const byPurpose: ReadonlyMap<string, FlyingStyle> = new Map([
  ['race', 'race'],
  ['freestyle', 'freestyle'],
  ...['cruise', 'endurance', 'indoor', 'training', 'filming'].map((purpose) => [purpose, 'gentle'] as const),
]);

/**
 * How the craft is flown: as the script says, else as its purpose lets expect; null where neither is known. `assumed`:
 * gets what was assumed for it, in words.
 */
export function flyingStyleOf(view: CraftView, assumed: string[]): FlyingStyle | null {
  if (view.isSet('craft.flying')) return styleNamed(view.word('craft.flying'));
  const purpose = view.isSet('craft.purpose') ? view.word('craft.purpose') : null;
  const style = purpose === null ? undefined : byPurpose.get(purpose);
  // Asked for by its own name: that is what has to be written.
  if (style === undefined) return styleNamed(view.word('craft.flying'));
  assumed.push(`flown ${styleWords[style]}, as craft.purpose = ${purpose} lets expect`);
  return style;
}

function styleNamed(word: string | null): FlyingStyle | null {
  return flyingStyles.find((style) => style === word) ?? null;
}

const styleWords: Readonly<Record<FlyingStyle, string>> = {
  gentle: 'gently',
  freestyle: 'freestyle',
  race: 'as in a race',
};

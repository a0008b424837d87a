import { axes, type SimulatedGains } from './craft';
import type { Random } from './random';
import type { RandomCraft } from './random-craft';
import { numbersOf } from './tuned';

// The settings of the board that flew, as such a board might print them: whole numbers of its own. No board does.

/** How a made-up board writes a line, and whether an axis or a term comes first in a name. */
interface Manner {
  readonly line: (name: string, value: string) => string;
  readonly name: (axis: string, term: string) => string;
}

const manners: readonly Manner[] = [
  { line: (name, value) => `${name} = ${value}`, name: (axis, term) => `${axis}.${term}` },
  { line: (name, value) => `${name} -> ${value};`, name: (axis, term) => `${term}-of-${axis}` },
  { line: (name, value) => `${name}: ${value}`, name: (axis, term) => `${axis} ${term}` },
];

const terms: readonly (keyof SimulatedGains)[] = ['proportional', 'integral', 'derivative', 'feedforward'];

/** All gains of a craft as its board's own numbers, among other lines. */
export function boardListing(
  { craft, factors }: Pick<RandomCraft, 'craft' | 'factors'>,
  random: Random,
): string {
  const { line, name } = random.pick(...manners);
  const gains = axes.flatMap((axis) => {
    const numbers = numbersOf(craft.board.gains[axis], factors);
    return terms.map((term) => line(name(axis, term), `${numbers[term]}`));
  });
  const { gyroRate, controlRate, gyroFilters, derivativeFilters } = craft.board;
  const [gyro] = gyroFilters;
  const [derivative] = derivativeFilters;
  const others = [
    line(name('gyro', 'rate'), `${gyroRate}`),
    line(name('control', 'rate'), `${controlRate}`),
    ...(gyro?.kind === 'butterworth' ? [line(name('gyro', 'cutoff'), `${Math.round(gyro.cutoff)}`)] : []),
    ...(derivative?.kind === 'butterworth'
      ? [line(name('derivative', 'cutoff'), `${Math.round(derivative.cutoff)}`)]
      : []),
  ];
  return [...others, ...gains, ''].join('\n');
}

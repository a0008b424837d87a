import { type Complex, one, over, times, unit } from '../../../physics/complex';
import { chainResponse, type DigitalFilter } from '../../../physics/filter';
import { type GainSpectra, gainSignal } from './gain-signals';

/** What the board does between gyro and command, as far as the script says. */
export interface KnownPath {
  readonly gyroFilters: readonly DigitalFilter[];
  readonly derivativeFilters: readonly DigitalFilter[];
  readonly feedforwardFilters: readonly DigitalFilter[];
  /** Hz; 0: not known. */
  readonly controlRate: number;
  /** Whether the derivative looks at the error, and not at the gyro alone. */
  readonly ofError: boolean;
}

export const terms = ['proportional', 'integral', 'derivative', 'feedforward', 'bent'] as const;
export type Term = (typeof terms)[number];

/** A signal times what is done to it at a frequency. */
export type TermPart = readonly [signal: number, done: (frequency: number) => Complex];

/** Which signals a term is made of. */
export function partsOfTerm(
  term: Term,
  { rate, isUnfiltered }: GainSpectra,
  path: KnownPath,
  late: number,
): readonly TermPart[] {
  const gyro = (frequency: number) =>
    isUnfiltered ? chainResponse({ filters: path.gyroFilters }, frequency) : one;
  // A wanted rate that was written down late stood so much further on.
  const plain = (frequency: number) => unit(2 * Math.PI * frequency * late);
  const minus = (of: (frequency: number) => Complex) => (frequency: number) => negative(of(frequency));
  const slope = (frequency: number) =>
    times(
      slopeBeside(frequency, rate, path.controlRate),
      chainResponse({ filters: path.derivativeFilters }, frequency),
    );
  switch (term) {
    case 'proportional':
      return [
        [gainSignal.wanted, plain],
        [gainSignal.gyro, minus(gyro)],
      ];
    case 'integral':
      return [
        [gainSignal.wantedSum, plain],
        [gainSignal.gyroSum, minus(gyro)],
      ];
    case 'derivative': {
      const turning: TermPart = [gainSignal.gyroSlope, minus((at) => times(slope(at), gyro(at)))];
      return path.ofError
        ? [[gainSignal.wantedSlope, (at) => times(plain(at), slope(at))], turning]
        : [turning];
    }
    case 'feedforward':
      return [
        [
          gainSignal.wantedSlope,
          (at) =>
            times(
              times(plain(at), slopeBeside(at, rate, path.controlRate)),
              chainResponse({ filters: path.feedforwardFilters }, at),
            ),
        ],
      ];
    case 'bent':
      return [[gainSignal.bent, () => one]];
  }
}

function negative({ re, im }: Complex): Complex {
  return { re: -re, im: -im };
}

/**
 * The board’s own difference of two rounds over the difference of the rows before and after: (1 − z⁻¹) f over i sin(ωT)/T.
 * Near 1 where rows come often enough, so that a window hardly tells the two apart.
 */
function slopeBeside(frequency: number, rate: number, controlRate: number): Complex {
  const turn = 2 * Math.PI * frequency;
  const ofRows = { re: 0, im: Math.sin(turn / rate) * rate };
  const board =
    controlRate > 0
      ? {
          re: controlRate * (1 - Math.cos(turn / controlRate)),
          im: controlRate * Math.sin(turn / controlRate),
        }
      : { re: 0, im: turn };
  return over(board, ofRows);
}

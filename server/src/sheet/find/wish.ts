import type { Craft } from '../../craft/craft';

/** What may be moved to reach what is wished for. */
export const moveNames = ['filters', 'notches', 'gains', 'voltages'] as const;
export type MoveName = (typeof moveNames)[number];

/** What each of them is, for people. */
export const moveWords: Readonly<Record<MoveName, string>> = {
  filters: 'low-passes of the gyro and the derivative: their cutoffs, and whether they are on',
  notches: 'their widths and centres, and whether they are on',
  gains: 'the derivative gains beside the proportional ones, all axes by one factor',
  voltages: 'what says when to land: the cell voltages to warn and to land at, the charge that stays',
};

/** What must hold, with every pack that is asked for; null: it is not asked for. */
export interface Holds {
  /** dB: the most that may be left of any motor tone behind the filters. */
  readonly toneLeft: number | null;
  /** deg: the least phase margin, of all axes at every operating point. */
  readonly phaseMargin: number | null;
  /** Times: the least gain margin, likewise. */
  readonly gainMargin: number | null;
  /** The least minutes hovering until it is time to land. */
  readonly minutes: number | null;
}

/** "What should I set?" */
export interface Wish {
  /** Packs for which it must hold; with some of the craft's packs alone, only these are tuned. */
  readonly packs: readonly (string | null)[];
  readonly holds: Holds;
  readonly moves: readonly MoveName[];
}

/**
 * What is wished for where nothing is said, round figures of ours: of each motor tone no more than a quarter; a phase
 * margin well above the one at which the checks speak up, and their gain margin.
 */
export const usualHolds: Holds = { toneLeft: -12, phaseMargin: 40, gainMargin: 2, minutes: null };
/** What may move where nothing is said. */
export const usualMoves: readonly MoveName[] = ['filters', 'notches'];

/** What may be asked for, in the units of the holds: beyond that no craft gives an answer. */
export const holdLimits: Readonly<Record<keyof Holds, readonly [number, number]>> = {
  toneLeft: [-120, 0],
  phaseMargin: [0, 120],
  gainMargin: [1, 20],
  minutes: [0.1, 600],
};

/** The usual wish with all packs of a craft, or with some. */
export function wishFor(craft: Craft, wanted: Partial<Wish> = {}): Wish {
  const packs = wanted.packs ?? [];
  return {
    packs: packs.length === 0 ? craft.packsOrNone() : packs,
    holds: wanted.holds ?? usualHolds,
    moves: wanted.moves ?? usualMoves,
  };
}

import type { DocumentEdit } from '../../language/document';
import type { FindingChanges, RenderedFinding } from '../compare/finding-changes';
import type { MovedFigure } from '../compare/moved-figures';
import type { WayToWrite } from '../not-known';
import type { PackReading } from './tuning';
import type { Wish } from './wish';

/** Three ways along the trade-off between delay and noise. */
export type ProposalId = 'least-delay' | 'middle' | 'quietest';

export const proposalTitles: Readonly<Record<ProposalId, string>> = {
  'least-delay': 'Least delay',
  middle: 'Middle',
  quietest: 'Quietest',
};

/** A place on the trade-off: means over the packs. */
export interface TradePoint {
  /** ms that the filters delay. */
  readonly delay: number;
  /**
   * % of throttle that comes of a tremble of 1 deg/s at the motors' tone; with measured noise the root of the sum of its
   * square and of that of what the measured noise comes to.
   */
  readonly noise: number;
}

export interface ProposedSetting {
  readonly path: string;
  /** The packs for which it is written; empty: for all that read its line. */
  readonly packs: readonly string[];
  /** Null: nothing is written there now. */
  readonly before: string | null;
  readonly after: string;
}

/** What the wish is held to with one pack. */
export interface ProposalReading extends PackReading {
  /** deg and times, the least of all axes at every operating point; null: not known, or no gain makes it swing. */
  readonly phaseMargin: number | null;
  readonly gainMargin: number | null;
}

export interface ProposedValues extends FindingChanges {
  readonly id: ProposalId;
  readonly title: string;
  readonly point: TradePoint;
  readonly settings: readonly ProposedSetting[];
  readonly readings: readonly ProposalReading[];
  /** Every figure that moves, for every pack of the craft: what gets worse first. */
  readonly moved: readonly MovedFigure[];
  /** What writing it takes, from the last place to the first. */
  readonly edits: readonly DocumentEdit[];
  /** The script with it. */
  readonly text: string;
}

/** The craft with every filter off that may move: whether it needs any. */
export interface Unfiltered {
  readonly point: TradePoint;
  readonly readings: readonly PackReading[];
  /** What would be raised. */
  readonly raised: readonly RenderedFinding[];
  /** Whether the wish would hold, and why not: a sentence. */
  readonly isEnough: boolean;
  readonly text: string;
}

/** "What should I set?", answered. */
export interface FoundValues {
  readonly wish: Wish;
  /** The whole of it in a sentence. */
  readonly answer: string;
  /** Whether measured noise is weighed, and how far it is known, or why not; null: nothing was weighed. */
  readonly measured: string | null;
  readonly now: TradePoint | null;
  readonly nowReadings: readonly ProposalReading[];
  readonly unfiltered: Unfiltered | null;
  /** Where the motors hum, where not enough is known to find values for it. */
  readonly tones: string | null;
  /** Lines for what is not known, to be filled in. */
  readonly ways: readonly WayToWrite[];
  /** The paths that may move. */
  readonly moving: readonly string[];
  /** What there is between the ends, the least delay first. */
  readonly front: readonly TradePoint[];
  /** From the least delay to the quietest; fewer where they are the same, none where the wish can't be met. */
  readonly proposals: readonly ProposedValues[];
  /** What stands in the way of the wish, a sentence each; empty where it is met. */
  readonly inTheWay: readonly string[];
  /** What was not moved as far as it might, and why. */
  readonly heldBack: readonly string[];
  /** Who decides. */
  readonly caution: string;
}

import type { CraftView } from '../craft/view';

/** A computed quantity of a craft, for the build sheet, for hovers and for rules. */
export interface Figure {
  /** `pack-full-voltage` */
  readonly id: string;
  readonly title: string;
  /** The unit that the numbers below are in. */
  readonly unit: string;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** What stands for an end of the span where no number does: `swinging`. */
  readonly lowWords?: string;
  readonly highWords?: string;
  /** Where it holds, for a figure of one of several places: `at 90 % of the usable output, pack full`. */
  readonly place?: string;
  /** What flights with the pack in view measured of it. */
  readonly measured?: readonly MeasuredInFlight[];
  /** Settings any of which would tell what was assumed of it for want of them, and is much of its span. */
  readonly settledBy?: readonly string[];
  /** Parameters whose default was used, and what else had to be assumed, in words. */
  readonly assumed: readonly string[];
  /** The formula with the numbers put in. */
  readonly why: string;
}

/** What was measured on a flight beside what was estimated before any. */
export interface MeasuredInFlight {
  readonly flight: string;
  /** In the figure's unit. */
  readonly reading: number;
  /** Null for a craft that could not hover by its estimate. */
  readonly estimate: number | null;
  /** Whether it has corrected the figures. */
  readonly isCorrected: boolean;
  /** `you measured 38 %, the estimate was 60 %: corrected` */
  readonly text: string;
}

/** How one figure is computed. */
export interface FigureSource {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  /** Whether its place is told beside it wherever it stands in a table. */
  readonly tellsPlace?: boolean;
  /** Whether it tells of a fault: there is none where the craft is sound. */
  readonly isFault?: boolean;
  /** Whether it may lie below nothing, as a margin or a gain in decibels may. */
  readonly isSigned?: boolean;
  /** Parameters that the figure hangs on most, for links between the sheet and the script. */
  readonly from: readonly string[];
  /** The member of a collection that it tells of; without it there is no figure. */
  readonly member?: { readonly collection: string; readonly name: string };
  /** Behind which settings an editor shows it, and in what words. */
  readonly hint?: { readonly at: readonly string[]; readonly words: (figure: string) => string };
  /**
   * The figure in its unit with the reason; null where an input is missing or outside the formula's domain.
   * Pure: reads the view only.
   */
  compute(view: CraftView): Computed | null;
  /** Whether it says anything of this craft. A craft without a camera lacks no video channel. Left out: of any. */
  concerns?(view: CraftView): boolean;
  /** Why there is none although all that it asks for is known, in a sentence; null where it just does not apply. */
  whyNot?(view: CraftView): string | null;
}

export interface Computed {
  readonly likely: number;
  /** Absent for an exact figure. */
  readonly low?: number;
  readonly high?: number;
  readonly lowWords?: string;
  readonly highWords?: string;
  readonly place?: string;
  readonly measured?: readonly MeasuredInFlight[];
  readonly settledBy?: readonly string[];
  readonly why: string;
  /** What was assumed beside defaults of parameters. */
  readonly assumed?: readonly string[];
}

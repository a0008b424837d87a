import type { Target } from '../target';

/** Part of the build sheet that a drawing belongs to. */
export type PlotPart = 'my-hands' | 'how-late' | 'which-pack' | 'who-sees-me';

/** A drawing of the build sheet, as plain data: the page draws it, and tells the same as a table. */
export type Plot = LinePlot | DelayStack | SwitchBars | OverlayPicture | CarrierStrip;

interface PlotHeading {
  /** Unique in the sheet. */
  readonly id: string;
  readonly part: PlotPart;
  readonly title: string;
}

export interface PlotAxis {
  readonly title: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  /** Whether equal steps multiply. */
  readonly isLogarithmic: boolean;
}

/** Curves over one axis. */
export interface LinePlot extends PlotHeading {
  readonly kind: 'lines';
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  /** Rising; in the unit of `x`. */
  readonly at: readonly number[];
  readonly lines: readonly PlotLine[];
  /** Stretches of the axis that are worth comparing the curves with. */
  readonly strips: readonly Strip[];
}

export interface PlotLine {
  readonly name: string;
  /** One for each of `at`, in the unit of `y`; null where there is none. */
  readonly values: readonly (number | null)[];
}

/** From low to high on the x axis; `likely` is where it mostly is. */
export interface Strip {
  readonly name: string;
  readonly low: number;
  readonly likely: number | null;
  readonly high: number;
}

/** Waits one after the other, in ms. */
export interface DelayStack extends PlotHeading {
  readonly kind: 'stack';
  readonly waits: readonly { readonly name: string; readonly milliseconds: number }[];
}

/** Where on their channel's travel the switches' functions are on, in µs. */
export interface SwitchBars extends PlotHeading {
  readonly kind: 'switches';
  readonly low: number;
  readonly high: number;
  readonly switches: readonly {
    readonly name: string;
    readonly channel: number;
    readonly from: number;
    readonly to: number;
    /** Where the switch stands when nobody touches it; null: the script doesn't say. */
    readonly rest: number | null;
    readonly target: Target | null;
  }[];
}

/** The overlay as the goggles show it. */
export interface OverlayPicture extends PlotHeading {
  readonly kind: 'overlay';
  readonly columns: number;
  readonly rows: number;
  readonly elements: readonly {
    readonly title: string;
    /** What it looks like, with an invented reading. */
    readonly sample: string;
    /** From the top and from the left, counted from 0. */
    readonly row: number;
    readonly column: number;
    readonly target: Target | null;
  }[];
}

/** Who sends where, in MHz. */
export interface CarrierStrip extends PlotHeading {
  readonly kind: 'carriers';
  readonly low: number;
  readonly high: number;
  /** Frequencies that need no licence, as far as the region's rules in the catalogue go. */
  readonly open: readonly { readonly from: number; readonly to: number; readonly name: string }[];
  readonly carriers: readonly {
    readonly name: string;
    readonly frequency: number;
    readonly halfWidth: number;
    readonly isOwn: boolean;
  }[];
  /** What two carriers make of each other (third order). */
  readonly products: readonly { readonly frequency: number; readonly name: string }[];
}

/** The highest value of any of the lines. */
export function highestOf(lines: readonly PlotLine[]): number {
  return Math.max(...lines.flatMap(({ values }) => values.map((value) => value ?? 0)));
}

/** "meadow: hover"; without a pack just "hover". */
export function namedFor(pack: string | null, name: string): string {
  return pack === null ? name : `${pack}: ${name}`;
}

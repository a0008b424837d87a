import type { AxisName } from '../figures/axis-names';

/** A number that was measured, with the span that holds the truth nine times in ten, in the unit named. */
export interface MeasuredSpan {
  readonly likely: number;
  readonly low: number;
  readonly high: number;
  /** A unit as the script writes it: `Hz`, `deg/s`, `V`, `mohm`, `%`. */
  readonly unit: string;
}

/** An answer with what it rests on, or why there is none and what to log or to fly for it. */
export type Told<T> =
  | { readonly told: T; readonly basis: string }
  | { readonly told: null; readonly reason: string; readonly advice: string };

/** What shakes about one axis. */
export interface AxisNoise {
  readonly axis: AxisName;
  /** After the board's filters and, where it is logged, before them. */
  readonly spectra: readonly Spectrum[];
  /** Between the lowest frequency at which nothing is flown on purpose and half of the rate of rows, deg/s. */
  readonly shaking: MeasuredSpan;
  /** Where the peaks were looked for: before the board's filters, if that is logged. */
  readonly peaksIn: Spectrum['signal'];
  readonly peaks: readonly Peak[];
  /** How many tones come and go beside the loudest of such; left out where none does. */
  readonly untold?: number;
}

export interface Spectrum {
  readonly signal: 'gyro' | 'unfiltered-gyro';
  /** Hz, rising, as many as a drawing needs. */
  readonly frequencies: readonly number[];
  /** Density, dB of (deg/s)²/Hz; the loudest of the bins that a point stands for. */
  readonly decibels: readonly number[];
}

export interface Peak {
  /** Hz; of a moving one where it mostly was. */
  readonly frequency: MeasuredSpan;
  readonly aboveFloor: MeasuredSpan;
  /** Of a moving one: how often it comes for each turn of a motor; 1 is the shaft, the count of blades a blade. */
  readonly order: MeasuredSpan | null;
  /** In words: `standing`, `moves with the motors`, `nobody can say: no motor speed and no throttle was logged`. */
  readonly source: string;
  /** Whether it may be a higher tone that too few rows a second show at a lower frequency. */
  readonly mayBeFolded: boolean;
  /** Of a moving one: the motor that shakes by far the most with it; left out where several do, or nobody can say. */
  readonly motor?: number;
  /** What the script's filters leave of it, dB; null without a craft or without a filter that is known. */
  readonly left: number | null;
}

/** How loud each frequency is while the motors work so hard, or turn so fast. */
export interface NoiseMap {
  readonly axis: AxisName;
  readonly signal: Spectrum['signal'];
  /** What the columns are told by; `motor output` is the mean of what the motors are told. */
  readonly against: 'throttle' | 'motor speed' | 'motor output';
  /** Edges of the columns, one more than there are columns: a share, or turns a second (Hz). */
  readonly edges: readonly number[];
  readonly frequencies: readonly number[];
  /** A row for each frequency; dB of (deg/s)²/Hz, null where the craft was never there. */
  readonly decibels: readonly (readonly (number | null)[])[];
}

export interface MotorWork {
  readonly motor: number;
  readonly mean: MeasuredSpan;
  /** Shares of the time at the upper and at the lower limit. */
  readonly atFull: number;
  readonly atIdle: number;
  /** How much harder it works than all together, %. */
  readonly harder: MeasuredSpan;
  /** Time constant from output to speed, ms. */
  readonly lag: Told<MeasuredSpan>;
}

export interface PackGave {
  readonly openVoltage: Told<MeasuredSpan>;
  /** Of pack and leads together, mohm: at once and after some seconds, for they differ. */
  readonly resistanceAtOneSecond: Told<MeasuredSpan>;
  readonly resistanceAtTenSeconds: Told<MeasuredSpan>;
  readonly usedCharge: Told<MeasuredSpan>;
  /** What the script lets expect of pack and leads after ten seconds, mohm; left out where it says too little. */
  readonly expected?: MeasuredSpan;
  readonly lowestVoltage: MeasuredSpan | null;
}

export interface Hovered {
  readonly throttle: MeasuredSpan;
  readonly current: MeasuredSpan | null;
  /** The throttle that the script's parts let expect at that voltage, %; left out where it says too little. */
  readonly expected?: MeasuredSpan;
  /** Thrust there was for the same output beside what the script lets expect, 1 where both agree; null without a craft. */
  readonly thrustScale: MeasuredSpan | null;
}

export interface LinkKept {
  readonly interval: MeasuredSpan;
  readonly longestGap: MeasuredSpan;
  readonly whole: MeasuredSpan;
}

/** Lines for the script: one undoable edit. */
export interface RecordingProposal {
  /** `Write hover-throttle = 38 % into flight 2026-06-12` */
  readonly title: string;
  readonly sets: readonly { readonly path: string; readonly value: string; readonly comment: string }[];
}

export interface RecordingFinding {
  /** `shake/tone-let-through`, with the words of the table of findings. */
  readonly id: string;
  readonly level: 'must-fix' | 'risk' | 'note';
  readonly sentence: string;
  readonly advice: string;
  readonly proposals: readonly RecordingProposal[];
}

/** What one flight of a recording says, by the pilot's questions; plain data. */
export interface RecordingReport {
  readonly name: string;
  readonly flight: number;
  readonly flights: number;
  readonly seconds: number;
  readonly rate: number;
  readonly isSimulated: boolean;
  /** What was not read, not checked or not known, first. */
  readonly leftOut: readonly string[];
  readonly findings: readonly RecordingFinding[];
  readonly noise: Told<readonly AxisNoise[]>;
  readonly noiseMaps: Told<readonly NoiseMap[]>;
  readonly motors: Told<readonly MotorWork[]>;
  readonly pack: Told<PackGave>;
  readonly hover: Told<Hovered>;
  readonly link: Told<LinkKept>;
  /** What may be written into the script as it is measured. */
  readonly proposals: readonly RecordingProposal[];
}

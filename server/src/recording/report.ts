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
export type MeasuredAnswer<T> =
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
  readonly lag: MeasuredAnswer<MeasuredSpan>;
}

export interface PackGave {
  readonly openVoltage: MeasuredAnswer<MeasuredSpan>;
  /** Of pack and leads together, mohm: at once and after some seconds, for they differ. */
  readonly resistanceAtOneSecond: MeasuredAnswer<MeasuredSpan>;
  readonly resistanceAtTenSeconds: MeasuredAnswer<MeasuredSpan>;
  readonly usedCharge: MeasuredAnswer<MeasuredSpan>;
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

/** How one axis follows what the sticks ask for, and how late it is. */
export interface AxisResponse {
  readonly axis: AxisName;
  readonly curve: MeasuredAnswer<ResponseCurve>;
  /** Up to where at least 71 % (-3 dB) of what is asked for comes, Hz. */
  readonly bandwidth: MeasuredAnswer<MeasuredSpan>;
  /** The most that comes of what is asked for at any frequency, %. */
  readonly peak: MeasuredAnswer<MeasuredSpan>;
  /** How much later it comes for each hertz beyond the frequency at which it comes half a turn late, as a wait, ms. */
  readonly phaseDelay: MeasuredAnswer<MeasuredSpan>;
  readonly step: MeasuredAnswer<StepCurve>;
  /** What only waits between what the motors are told and the gyro, its filters too, ms. */
  readonly delay: MeasuredAnswer<MeasuredSpan>;
  /** Time constant between the same two beside that wait, ms: the motors with their propellers. */
  readonly lag: MeasuredAnswer<MeasuredSpan>;
  readonly margins: MeasuredAnswer<MeasuredMargins>;
}

/** What comes of a sine that the sticks ask for, from there to the gyro. */
export interface ResponseCurve {
  /** Hz, rising: those that were flown enough to tell. */
  readonly frequencies: readonly number[];
  /** dB */
  readonly gain: readonly number[];
  /** deg, below 0 where it comes late, without jumps of a whole turn. */
  readonly phase: readonly number[];
  /** From 0 to 1: the share of what the gyro says that follows from what was asked for. */
  readonly coherence: readonly number[];
  /** Share by which the gain may be off nine times in ten, at each frequency; of the phase the same, in rad. */
  readonly off: readonly number[];
}

/** What comes of a sudden call for a rate that stays, as the response says it. */
export interface StepCurve {
  /** From the call on. */
  readonly seconds: readonly number[];
  /** Of what was asked for; 1 is all of it. */
  readonly share: readonly number[];
  /** Where it has come to after 0.6 s, %: told by the slow turns, not by the curve. */
  readonly endGain: MeasuredSpan;
  /** Until half of where it ends has come, ms. */
  readonly half: MeasuredSpan;
}

export interface MeasuredMargins {
  /** `controller`: the craft as measured behind the controller of the script; `answer`: from the answer alone. */
  readonly by: 'controller' | 'answer';
  /** Hz */
  readonly crossover: MeasuredSpan;
  /** deg */
  readonly phaseMargin: MeasuredSpan;
  /** How many times more gain it takes to swing; null where that lies above what was flown, or is known too badly. */
  readonly gainMargin: MeasuredSpan | null;
  /** How many times a disturbance is made larger where it is most. */
  readonly sensitivityPeak: MeasuredSpan;
}

/** One of the board's gains about an axis, in the script's unit: `%/(deg/s)`, `%/deg`, `%/(deg/s^2)`. */
export interface MeasuredGain {
  readonly axis: AxisName;
  readonly term: 'proportional' | 'integral' | 'derivative';
  readonly gain: MeasuredAnswer<MeasuredSpan>;
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
  readonly noise: MeasuredAnswer<readonly AxisNoise[]>;
  readonly noiseMaps: MeasuredAnswer<readonly NoiseMap[]>;
  readonly motors: MeasuredAnswer<readonly MotorWork[]>;
  readonly pack: MeasuredAnswer<PackGave>;
  readonly hover: MeasuredAnswer<Hovered>;
  readonly link: MeasuredAnswer<LinkKept>;
  readonly responses: MeasuredAnswer<readonly AxisResponse[]>;
  /** What the board's own numbers come to; all three of each axis, told or withheld. */
  readonly gains: MeasuredAnswer<readonly MeasuredGain[]>;
  /** What may be written into the script as it is measured. */
  readonly proposals: readonly RecordingProposal[];
}

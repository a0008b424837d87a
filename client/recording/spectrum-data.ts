import type { Peak } from '../../server/src/lsp/recording-protocol';
import type { LinePlot } from '../../server/src/sheet/plots/plot';

export interface SpectrumLine {
  readonly name: string;
  /** The tones found in it. */
  readonly peaks: readonly Peak[];
  /** Hz, rising. */
  readonly frequencies: readonly number[];
  /** dB of (deg/s)²/Hz, one for each. */
  readonly decibels: readonly number[];
}

export interface DrawnSpectrum {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly SpectrumLine[];
  /** What the script's filters leave, drawn over it with a scale of its own, and the tones below. */
  readonly filters: LinePlot | null;
}

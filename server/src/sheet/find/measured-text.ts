import { halfRate } from '../../physics/sampling';
import type { MeasuredNoise } from '../../recording/measured-noise';
import type { MeasuredAnswer } from '../../recording/report';
import { uncapitalised } from '../../units/capitals';
import { shortNumber } from '../../units/number-text';
import type { PackReading } from './tuning';

/** Where a search is asked for without any recording. */
export const noRecording: MeasuredAnswer<MeasuredNoise> = {
  told: null,
  reason: 'No flight of the script names a recording.',
  advice:
    'Log the gyro before the board’s filters, at 500 rows a second or more, and name the file in the flight.',
};

/** What the noise of a place on the trade-off comes of. */
export function trembleText(nowReadings: readonly PackReading[]): string {
  const isMeasured = nowReadings.some(({ measured }) => measured !== null);
  return isMeasured ? 'a tremble of 1 deg/s and the measured noise together' : 'a tremble of 1 deg/s';
}

/** Whether the noise of a flight is weighed, and how far it is known; a sentence or two. */
export function weighedText(
  measured: MeasuredAnswer<MeasuredNoise>,
  follows: { readonly gyro: boolean; readonly derivative: boolean },
): string {
  if (measured.told === null)
    return `Weighed by the model of the motors’ tones alone, not by measured noise: ${uncapitalised(measured.reason)} ${measured.advice}`;
  const { name, isSimulated, rate, frequencies, moments } = measured.told;
  const half = shortNumber(halfRate(rate));
  const source = isSimulated ? `${name} (simulated)` : name;
  const left =
    follows.gyro && moments.length === 0
      ? ' What follows the motors is left out of it, for their speeds were not logged.'
      : follows.derivative
        ? ' What of the derivative’s filters follows the motors is left out of it.'
        : '';
  return `Weighed with the noise that ${source} has before the board’s filters from ${shortNumber(frequencies[0] ?? 0)} to ${half} Hz, beside the model of the motors’ tones; above ${half} Hz, half of the rate of its rows, nothing is known of it, and what shakes there may show at a lower frequency.${left}`;
}

/** What is left of the measured noise with one pack, now and then; null where none was measured. */
function measuredClauses(now: PackReading | undefined, then: PackReading): readonly string[] | null {
  if (then.measured === null) return null;
  const before = now?.measured?.axes ?? [];
  const axes = then.measured.axes.map(({ axis, left, unfiltered }) => {
    const was = before.find((one) => one.axis === axis)?.left;
    const from = was === undefined ? '' : `${shortNumber(was)} → `;
    return `${axis} ${from}${shortNumber(left)} (${shortNumber(unfiltered)}) deg/s`;
  });
  const tones = then.measured.tones.map(({ axis, frequency, left }) => {
    const was = now?.measured?.tones.find((one) => one.axis === axis && one.frequency === frequency)?.left;
    const from = was === undefined ? '' : `${offBy(was)} → `;
    return `standing tone at ${shortNumber(frequency)} Hz about ${axis}: ${from}${offBy(left)} dB off`;
  });
  return [...axes, ...commandClause(now, then), ...tones];
}

/** What the controller makes of it. */
function commandClause(now: PackReading | undefined, then: PackReading): readonly string[] {
  const [was, is] = [now?.measured?.command ?? null, then.measured?.command ?? null];
  if (is === null) return [];
  const from = was === null ? '' : `${shortNumber(was)} → `;
  return [`with the gains ${from}${shortNumber(is)} % of throttle`];
}

/** The same as one sentence. */
export function measuredSentence(now: PackReading | undefined, then: PackReading): string | null {
  const clauses = measuredClauses(now, then);
  if (clauses === null || then.measured === null) return null;
  return `Measured noise up to ${shortNumber(then.measured.to)} Hz, rms behind the filters (before them): ${clauses.join('; ')}.`;
}

function offBy(left: number): string {
  return shortNumber(Math.abs(left) < 0.05 ? 0 : -left);
}

import { overJitter } from '../../physics/tone';
import { shortNumber } from '../../units/number-text';
import type { Recording } from '../recording';
import type { FlightRows } from './flight-rows';

/** At this tone, or at half of what the rows can show, the noise of uneven times is told, Hz. */
const jitterToneAt = 300;
/** A noise that lies farther below the tone that makes it is none, dB. Common practice. */
const farBelow = 30;

/** What of a flight the estimates leave out, and what makes them worse, as finished sentences. */
export function estimateRemarks(recording: Recording, flight: number, rows: FlightRows): readonly string[] {
  const all = recording.flights[flight - 1]?.stretches ?? [];
  const left = all.length - rows.stretches.length;
  const seconds = all
    .filter((one) => !rows.stretches.includes(one))
    .reduce((sum, { from, to, rate }) => sum + (rate > 0 ? (to - from) / rate : 0), 0);
  const other =
    left === 0
      ? []
      : [
          `${left === 1 ? 'A part' : `${left} parts`} of the flight, ${shortNumber(seconds)} s in all, ${left === 1 ? 'has' : 'have'} another rate of rows than the rest: not looked at.`,
        ];
  return [...other, ...jitterRemark(recording, rows)];
}

/** Rows are taken to come evenly: to put them where their times say they were would dull high tones by more. */
function jitterRemark({ time }: Recording, { stretches, rate }: FlightRows): readonly string[] {
  let [square, count] = [0, 0];
  for (const { from, to } of stretches)
    for (let row = from + 1; row < to; row += 1) {
      const off = (time[row] ?? 0) - (time[row - 1] ?? 0) - 1 / rate;
      // Of two times each is off by itself.
      square += off ** 2 / 2;
      count += 1;
    }
  const deviation = Math.sqrt(square / Math.max(1, count));
  const tone = Math.min(jitterToneAt, rate / 4);
  const below = overJitter(tone, deviation);
  if (!(below < farBelow)) return [];
  return [
    `The times of the rows are uneven by ${shortNumber(1e6 * deviation, 2)} us. If the rows themselves were, a tone at ${shortNumber(tone)} Hz would have a noise ${Math.round(below)} dB below it.`,
  ];
}

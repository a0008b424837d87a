import type { CraftView } from '../../server/src/craft/view';
import type { Channel } from '../../server/src/recording/channel';
import type { Recording } from '../../server/src/recording/recording';
import type { RecordingReport } from '../../server/src/recording/report';
import { reportOf } from '../../server/src/recording/report-of';
import { testCatalog } from './catalog';

/** A recording of one flight without gaps, each channel told by time; `made` in its order, so that one may lean on another. */
export function madeRecording(
  { seconds, rate }: { readonly seconds: number; readonly rate: number },
  made: Readonly<Partial<Record<Channel, (time: number, row: number) => number>>>,
): Recording {
  const count = Math.round(seconds * rate);
  const channels = new Map(
    Object.keys(made).map((name): [Channel, Float32Array] => [name as Channel, new Float32Array(count)]),
  );
  for (let row = 0; row < count; row += 1)
    for (const [name, values] of channels) values[row] = made[name]?.(row / rate, row) ?? Number.NaN;
  const stretch = { from: 0, to: count, rate };
  return {
    name: 'made.csv',
    time: Float64Array.from({ length: count }, (_, row) => row / rate),
    channels,
    flights: [{ from: 0, to: count, stretches: [stretch] }],
    leftOut: [],
  };
}

/** Normal deviates, the same each time. */
export function noise(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** What is reported in the end, and the longest step on the way, ms. */
export function reported(recording: Recording, view: CraftView | null = null): RecordingReport {
  const work = reportOf(recording, 1, view, testCatalog.recordings.findings);
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

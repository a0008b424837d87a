import type { RecordingReport } from '../../../server/src/recording/report';
import { confirmedLayout, recordingOf, wholeReport } from '../../support/recorded';
import { type RandomFlight, randomFlight } from '../../support/simulated-flights';
import { folded, quantities } from './quantities';
import type { Case } from './quantity';
import { type Score, scoreOf } from './score';

/** A case with the flight that it is of. */
export interface ProvedCase extends Case {
  readonly quantity: string;
  readonly seed: number;
}

export interface Proof {
  readonly scores: readonly Score[];
  /** Tones that were called standing, and those of them that nothing of the frame makes. */
  readonly standing: { readonly told: number; readonly mistaken: number };
}

/** Which seeds are flown: so many, from one on, each or every so many. */
export interface Flights {
  readonly from: number;
  readonly count: number;
  readonly every?: number;
}

/** Flies so many random flights and reads each from its bytes to its report. */
export async function prove(
  { from, count, every = 1 }: Flights,
  see: (one: ProvedCase) => void = () => undefined,
): Promise<Proof> {
  const cases = new Map<string, Case[]>(quantities.map(({ name }) => [name, []]));
  let [told, mistaken] = [0, 0];
  for (let seed = from; seed < from + count * every; seed += every) {
    const flight = randomFlight(seed);
    const layouts = saysItsUnits(flight.layout.name) ? [] : [confirmedLayout(flight.layout)];
    const recording = await recordingOf(flight.bytes, layouts);
    const report = wholeReport(recording, 1, flight.view);
    const standing = standingTones(report);
    told += standing.length;
    mistaken += standing.filter((frequency) => !isOfFrame(flight, frequency)).length;
    for (const quantity of quantities) {
      const found = quantity.of(flight, report);
      if (found === null) continue;
      cases.get(quantity.name)?.push(found);
      see({ ...found, quantity: quantity.name, seed });
    }
  }
  const scores = quantities.map((quantity) => scoreOf(quantity, cases.get(quantity.name) ?? []));
  return { scores, standing: { told, mistaken } };
}

function standingTones({ noise }: RecordingReport): readonly number[] {
  return (noise.told ?? []).flatMap(({ peaks }) =>
    peaks.flatMap(({ source, frequency }) => (source === 'standing' ? [frequency.likely] : [])),
  );
}

/** Of the frame's tone, where rows show it, short segments see no more than this, Hz. */
const near = 7;

function isOfFrame({ truth, rate, craft }: RandomFlight, frequency: number): boolean {
  return truth.tones.some((tone) => {
    const sampled = folded(tone, craft.board.gyroRate);
    return Math.abs(folded(sampled, rate) - frequency) < near;
  });
}

/** These can be read without a question. */
export function saysItsUnits(layout: string): boolean {
  return layout === 'bracketed' || layout === 'semicolons';
}

import { confirmedLayout, recordingOf, wholeReport } from '../../../support/recorded';
import { randomFlight } from '../../../support/simulated-flights';
import { type Case, quantities } from './quantities';
import { type Score, scoreOf } from './score';

/** A case with the flight that it is of. */
export interface ProvedCase extends Case {
  readonly quantity: string;
  readonly seed: number;
}

/** Flies so many random flights and reads each from its bytes to its report. */
export async function prove(
  from: number,
  count: number,
  see: (one: ProvedCase) => void = () => undefined,
): Promise<readonly Score[]> {
  const cases = new Map<string, Case[]>(quantities.map(({ name }) => [name, []]));
  for (let seed = from; seed < from + count; seed += 1) {
    const flight = randomFlight(seed);
    const layouts = saysItsUnits(flight.layout.name) ? [] : [confirmedLayout(flight.layout)];
    const recording = await recordingOf(flight.bytes, layouts);
    const report = wholeReport(recording, 1, flight.view);
    for (const quantity of quantities) {
      const found = quantity.of(flight, report);
      if (found === null) continue;
      cases.get(quantity.name)?.push(found);
      see({ ...found, quantity: quantity.name, seed });
    }
  }
  return quantities.map((quantity) => scoreOf(quantity, cases.get(quantity.name) ?? []));
}

/** These can be read without a question. */
export function saysItsUnits(layout: string): boolean {
  return layout === 'bracketed' || layout === 'semicolons';
}

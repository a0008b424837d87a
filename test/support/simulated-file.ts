import { ailing } from '../simulator/ailing';
import { craftFromScript, scriptAt } from '../simulator/craft-from-script';
import { csvOf } from '../simulator/csv';
import { layouts } from '../simulator/layouts';
import { flightOf } from '../simulator/pilot';
import { Random } from '../simulator/random';
import { randomRecorder } from '../simulator/random-craft';
import { simulated } from '../simulator/simulated-flight';

export interface FlightWanted {
  /** Of what stands in the craft, Hz. */
  readonly tone: number;
  readonly layout?: string;
  readonly seconds?: number;
}

/** A flight of the demo's racer as a board would have written it down. */
export function simulatedFile({ tone, layout = 'bracketed', seconds = 12 }: FlightWanted): Uint8Array {
  const random = new Random(3);
  const columns = layouts.get(layout);
  if (columns === undefined) throw new Error(`there is no layout ${layout}`);
  const craft = ailing(craftFromScript(scriptAt('test/demo/sandmartin.craft', 'sprint')), tone, random);
  const recorder = randomRecorder(craft.board.gyroRate, 800, seconds, random);
  const { rows } = simulated(craft, flightOf(seconds, 0.8, random), { ...recorder, gaps: [] }, 3);
  return csvOf(rows, columns);
}

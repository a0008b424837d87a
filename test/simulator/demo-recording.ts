import { join } from 'node:path';
import { ailing } from './ailing';
import { craftFromScript, scriptAt } from './craft-from-script';
import { csvOf, type Layout } from './csv';
import { layouts } from './layouts';
import { flightOf } from './pilot';
import { Random } from './random';
import type { Recorder } from './recorder';
import { type SimulatedFlight, simulated } from './simulated-flight';

const demo = join(__dirname, '../demo');

/** The flight of the demo's racer of which there is a recording. */
export const demoRecordingPath = join(demo, 'flights', 'before-the-rain.csv');

const seed = 14;
const seconds = 24;
/** Of the frame, Hz: the low-pass of the script lets it through, and no notch is near. */
const tone = 118;

const recorder: Recorder = {
  rate: 400,
  outputsLate: 0.0003,
  speedsLate: 0.0015,
  packEvery: 0.01,
  jitter: 0,
  gaps: [],
  voltageNoise: 0.01,
  currentNoise: 0.1,
  currentOffset: 0,
};

/** The racer with its sprint pack, a tone of the frame and a propeller that has touched a tree. */
export function demoRecording(): SimulatedFlight & { readonly bytes: Uint8Array } {
  const random = new Random(seed);
  const craft = ailing(craftFromScript(scriptAt(join(demo, 'sandmartin.craft'), 'sprint')), tone, random);
  const flight = simulated(craft, flightOf(seconds, 0.8, random), recorder, seed);
  return { ...flight, bytes: csvOf(flight.rows, layout()) };
}

function layout(): Layout {
  const brief = layouts.get('brief');
  if (brief === undefined) throw new Error('the layout is missing');
  return { ...brief, before: [...brief.before, '# made by: npm run simulate -- --demo'] };
}

import { join } from 'node:path';
import { ailing } from './ailing';
import { craftFromScript, scriptAt } from './craft-from-script';
import { csvOf, type Layout } from './csv';
import { layouts } from './layouts';
import type { Act } from './pilot';
import { Random } from './random';
import type { Recorder } from './recorder';
import { type SimulatedFlight, simulated } from './simulated-flight';

const demo = join(__dirname, '../demo');

/** The flight of the demo's racer of which there is a recording. */
export const demoRecordingPath = join(demo, 'flights', 'before-the-rain.csv');

const seed = 14;
/** Of the frame, Hz: the low-pass of the script lets it through, and no notch is near. */
const tone = 118;

const recorder: Recorder = {
  rate: 400,
  wantedLate: 0,
  outputsLate: 0.0003,
  speedsLate: 0.0015,
  packEvery: 0.01,
  jitter: 0,
  gaps: [],
  voltageNoise: 0.01,
  currentNoise: 0.1,
  currentOffset: 0,
};

/** A short flight with what tells of everything: a hover, the throttle up and down, quick sticks about each axis. */
const acts: readonly Act[] = [
  { kind: 'off', seconds: 0.3 },
  { kind: 'idle', seconds: 0.5 },
  { kind: 'take-off', seconds: 2 },
  { kind: 'hover', seconds: 2.4 },
  { kind: 'steps', axis: 0, rate: 2.6, seconds: 2.64 },
  { kind: 'steps', axis: 1, rate: 2.6, seconds: 2.64 },
  { kind: 'climb', throttle: 0.3, seconds: 5 },
  { kind: 'steps', axis: 2, rate: 2, seconds: 1.32 },
  { kind: 'hover', seconds: 2 },
  { kind: 'punch', throttle: 0.35, seconds: 2.4 },
  { kind: 'land', seconds: 2 },
  { kind: 'idle', seconds: 0.3 },
  { kind: 'off', seconds: 0.2 },
];

/** The racer with its sprint pack, a tone of the frame and a propeller that has touched a tree. */
export function demoRecording(): SimulatedFlight & { readonly bytes: Uint8Array } {
  const random = new Random(seed);
  const craft = ailing(craftFromScript(scriptAt(join(demo, 'sandmartin.craft'), 'sprint')), tone, random);
  const flight = simulated(craft, acts, recorder, seed);
  return { ...flight, bytes: csvOf(flight.rows, layout()) };
}

function layout(): Layout {
  const brief = layouts.get('brief');
  if (brief === undefined) throw new Error('the layout is missing');
  return { ...brief, before: [...brief.before, '# made by: npm run simulate -- --demo'] };
}

import type { CraftView } from '../../craft/view';
import { kindOf, stagesOf } from '../../figures/filter-stages';
import { shortNumber } from '../../units/number-text';
import { movesWithMotors } from '../estimate/noise/peaks-of';
import type { AxisNoise, Peak, RecordingProposal, RecordingReport } from '../report';
import { flownOn } from './flown';
import type { FoundInFlight } from './found';
import { decibelText, likelyText } from './measured-text';

/** What stands out by so much is worth a filter, and what filters leave by more than so is let through, dB. Ours. */
const loud = 10;
const letThrough = -10;

interface LoudTone {
  readonly axis: string;
  readonly peak: Peak;
}

/** Tones that the filters let through, each about the axis on which it is loudest. */
export function tonesLetThrough(report: RecordingReport, view: CraftView): readonly FoundInFlight[] {
  const tones = (report.noise.told ?? [])
    .flatMap(({ axis, peaks }) => peaks.map((peak) => ({ axis, peak })))
    .filter(({ peak }, _at, all) => isLetThrough(peak) && !all.some((other) => movesThere(other.peak, peak)))
    .sort((one, other) => other.peak.aboveFloor.likely - one.peak.aboveFloor.likely);
  const apart = tones.filter((one, at) => !tones.slice(0, at).some((other) => isSame(one.peak, other.peak)));
  return apart.map(({ axis, peak }) => ({
    id: 'shake/tone-let-through',
    values: {
      frequency: likelyText(peak.frequency),
      axis,
      above: decibelText(peak.aboveFloor.likely),
      source: peak.source,
      taken: takenText(peak.left ?? 0),
    },
    proposals: filterFor({ axis, peak }, report, view),
  }));
}

/** `only 3 dB`, `nothing` */
function takenText(left: number): string {
  return Math.round(-left) <= 0 ? 'nothing' : `only ${decibelText(-left)}`;
}

/** A tone that may lie elsewhere, folded down by the rows, is not held against any filter. */
function isLetThrough({ aboveFloor, left, mayBeFolded, order }: Peak): boolean {
  if (mayBeFolded && order === null) return false;
  return aboveFloor.low >= loud - 2 && aboveFloor.likely >= loud && left !== null && left > letThrough;
}

/** Whether a tone about any axis goes along with the motors, nobody knows how often for each turn, and is the same one. */
function movesThere(moving: Peak, peak: Peak): boolean {
  return moving.order === null && moving.source === movesWithMotors && isSame(moving, peak);
}

function isSame(one: Peak, other: Peak): boolean {
  if (one.order !== null && other.order !== null)
    return Math.abs(one.order.likely / other.order.likely - 1) < 0.05;
  return (
    one.order === null && other.order === null && Math.abs(one.frequency.likely - other.frequency.likely) < 4
  );
}

/** A notch is so wide beside its centre, or so wide, Hz: a frame’s tone moves a little with load and warmth. Ours. */
const notchShare = 0.15;
const narrowest = 12;

function filterFor(
  { axis, peak }: LoudTone,
  report: RecordingReport,
  view: CraftView,
): readonly RecordingProposal[] {
  const stages = stagesOf(view, 'gyro');
  const number = Math.max(0, ...stages.map((stage) => stage.number)) + 1;
  if (number > 32) return [];
  const path = `gyro.filter.${number}`;
  const { when } = flownOn(view, report.name);
  const comment = `measured ${when}: ${decibelText(peak.aboveFloor.likely)} over the noise about ${axis}`;
  const set = (setting: string, value: string) => ({ path: `${path}.${setting}`, value, comment });
  if (peak.order === null) {
    const centre = Math.round(peak.frequency.likely);
    const width = Math.max(narrowest, Math.round(notchShare * centre));
    return [
      {
        title: `Add a notch at ${centre} Hz, ${width} Hz wide, as filter ${number} of the gyro`,
        sets: [set('kind', 'notch'), set('centre', `${centre} Hz`), set('width', `${width} Hz`)],
      },
    ];
  }
  const order = Math.round(peak.order.likely);
  const isWhole = Math.abs(peak.order.likely / order - 1) < 0.04 && order <= 3;
  const follows = stages.some((stage) => kindOf(view, stage) === 'follow-motors');
  if (!isWhole || follows || !view.isOn('esc.speed-feedback')) return [];
  const from = Math.max(20, Math.round((0.6 * peak.frequency.likely) / order / 10) * 10);
  return [
    {
      title: `Add notches that follow the motors, up to ${order === 1 ? 'their own tone' : `${order} times their turns`}, as filter ${number} of the gyro`,
      sets: [
        set('kind', 'follow-motors'),
        set('tones', shortNumber(order)),
        set('from', `${from} Hz`),
        set('width', `${followWidth} Hz`),
      ],
    },
  ];
}

/** Of notches that follow, Hz: speeds are told a few hundred times a second and a few hertz late. Ours. */
const followWidth = 30;

/** A tone once a turn that one motor makes by far the most. */
export function motorsThatShake(report: RecordingReport): readonly FoundInFlight[] {
  const tones = (report.noise.told ?? []).flatMap(({ axis, peaks }) =>
    peaks.flatMap((peak) =>
      peak.motor !== undefined && isOwn(peak) && peak.aboveFloor.likely >= loud
        ? [{ axis, motor: peak.motor, above: peak.aboveFloor.likely }]
        : [],
    ),
  );
  const loudest = tones.sort((one, other) => other.above - one.above);
  return loudest
    .filter(({ motor }, at) => loudest.findIndex((one) => one.motor === motor) === at)
    .map(({ axis, motor, above }) => ({
      id: 'shake/one-motor',
      values: { motor: `${motor}`, axis, above: decibelText(above) },
      proposals: [],
    }));
}

function isOwn({ order }: Peak): boolean {
  return order !== null && Math.abs(order.likely - 1) < 0.05;
}

/** About all axes, where it was logged before the board's filters. */
export function tonesBefore(noise: readonly AxisNoise[]): readonly Peak[] | null {
  return noise.length > 0 && noise.every(({ peaksIn }) => peaksIn === 'unfiltered-gyro')
    ? noise.flatMap(({ peaks }) => peaks)
    : null;
}

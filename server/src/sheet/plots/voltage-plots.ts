import { CraftView } from '../../craft/view';
import { type FlightMoment, flightCurve } from '../../figures/flight-curve';
import { figureOf } from '../../figures/index';
import { type LinePlot, namedFor, type PlotLine, type Strip } from './plot';

/** Even moments from take-off to the last landing. */
const moments = 40;

interface FlownCurve {
  readonly pack: string | null;
  readonly curve: readonly FlightMoment[];
}

/** What a cell shows and what the craft can still give, from a full pack until it is due to land, a line for each pack. */
export function voltagePlots(view: CraftView): readonly LinePlot[] {
  const views = view.craft.packsOrNone().map((pack) => new CraftView(view.craft, pack));
  const flown = views.flatMap((one): readonly FlownCurve[] => {
    const curve = flightCurve(one)?.value ?? [];
    return curve.length === 0 ? [] : [{ pack: one.pack, curve }];
  });
  if (flown.length === 0) return [];
  const ends = flown.map(({ curve }) => (curve.at(-1)?.seconds ?? 0) / 60);
  const strips = views.flatMap(landingOf);
  const longest = Math.max(...ends, ...strips.map(({ high }) => high));
  const even = Array.from({ length: moments + 1 }, (_, step) => (step / moments) * longest);
  const at = [...new Set([...even, ...ends])].sort((one, other) => one - other);
  const line = ({ pack, curve }: FlownCurve, words: string, of: (moment: FlightMoment) => number | null) => ({
    name: namedFor(pack, words),
    values: at.map((minutes) => between(curve, 60 * minutes, of)),
  });
  const hovers = flown.map((one) => line(one, 'hovering', ({ hoverCell }) => hoverCell));
  const fulls = flown.map((one) => line(one, 'at full throttle', ({ fullCell }) => fullCell));
  // Beyond so many lines none can be told from the others.
  const voltages = flown.length <= 2 ? [...hovers, ...fulls] : hovers;
  const thrusts = flown.map((one) => line(one, 'at full throttle', ({ thrustToWeight }) => thrustToWeight));
  const [lowest, highest] = endsOf(voltages);
  const shared = {
    kind: 'lines',
    part: 'which-pack',
    x: { title: 'Time in the hover', unit: 'min', low: 0, high: longest, isLogarithmic: false },
    at,
    strips,
  } as const;
  return [
    {
      ...shared,
      id: 'voltage',
      title: 'Voltage of a cell over the flight, from full to landing',
      y: { title: 'Voltage of a cell', unit: 'V', low: lowest - 0.1, high: highest, isLogarithmic: false },
      lines: voltages,
    },
    {
      ...shared,
      id: 'thrust-left',
      title: 'Thrust-to-weight that is left over the flight',
      y: { title: 'Thrust-to-weight', unit: '', low: 0, high: endsOf(thrusts)[1], isLogarithmic: false },
      lines: thrusts,
    },
  ];
}

/** On a straight line between two moments of a flight; null after its last. */
function between(
  curve: readonly FlightMoment[],
  seconds: number,
  of: (moment: FlightMoment) => number | null,
): number | null {
  const next = curve.findIndex((moment) => moment.seconds >= seconds - 1e-6);
  const [before, after] = [curve[next - 1] ?? curve[next], curve[next]];
  const [low, high] = [before === undefined ? null : of(before), after === undefined ? null : of(after)];
  if (before === undefined || after === undefined || low === null || high === null) return null;
  const span = after.seconds - before.seconds;
  return span === 0 ? high : low + Math.min(1, (seconds - before.seconds) / span) * (high - low);
}

function endsOf(lines: readonly PlotLine[]): readonly [low: number, high: number] {
  const all = lines.flatMap(({ values }) => values.flatMap((value) => value ?? []));
  return [Math.min(...all), Math.max(...all)];
}

function landingOf(view: CraftView): readonly Strip[] {
  const landing = figureOf(view, 'minutes-to-landing');
  if (landing === null) return [];
  const { low, likely, high } = landing;
  return [{ name: namedFor(view.pack, 'landing'), low, likely, high }];
}

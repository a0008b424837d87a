import { shortNumber } from '../../units/number-text';
import { unitOf } from '../../units/unit';
import type { RowSurvey } from '../read/survey';
import { type ColumnQuestion, isTaken, type ProposedColumn } from './proposed-column';

/** What columns say of each other: two that hold the same, clocks beside a clock, what turns against what is asked. */
export function together(proposed: readonly ProposedColumn[], survey: RowSurvey): readonly ProposedColumn[] {
  return againstWanted(doubled(oneClock(proposed)), survey);
}

/** Of several clocks the one that can be read at once and counts finest; seconds beside their nanoseconds are one. */
function oneClock(proposed: readonly ProposedColumn[]): readonly ProposedColumn[] {
  const clocks = proposed.filter(({ means }) => means.channel === 'time');
  const parts = proposed.find(({ column }) => /^n(?:ano)?secs?(?:onds)?$/i.test(column.heading.trim()));
  const seconds = clocks.find(({ column }) => /^secs?(?:onds)?$/i.test(column.heading.trim()));
  const only = clocks.filter((one) => one !== seconds && one !== parts && isTaken(one));
  const chosen = only[0] ?? clocks.find(isTaken) ?? clocks[0];
  if (only.length === 0 && seconds !== undefined && parts !== undefined)
    return joined(proposed, seconds, parts);
  return proposed.map((one) =>
    one.means.channel !== 'time' || one === chosen
      ? one
      : {
          ...one,
          means: { heading: one.means.heading },
          why: 'Another column holds the time.',
          asks: [],
          leftOut: 'not needed',
        },
  );
}

function joined(
  proposed: readonly ProposedColumn[],
  seconds: ProposedColumn,
  parts: ProposedColumn,
): readonly ProposedColumn[] {
  return proposed.map((one) => {
    if (one === seconds)
      return {
        ...one,
        means: { ...one.means, unit: 's' },
        asks: [],
        why: 'It counts the seconds of the time.',
      };
    if (one !== parts)
      return one.means.channel === 'time' ? { ...one, means: { heading: one.means.heading }, asks: [] } : one;
    return {
      ...one,
      means: { heading: one.means.heading, channel: 'time-parts', unit: 'ns' },
      asks: [],
      why: 'It counts the nanoseconds of the time.',
    };
  });
}

/** Two columns that seem to hold the same: nobody but the pilot knows which one counts. */
function doubled(proposed: readonly ProposedColumn[]): readonly ProposedColumn[] {
  return proposed.map((one) => {
    const { channel } = one.means;
    const alike = channel === undefined ? [] : proposed.filter(({ means }) => means.channel === channel);
    // Who is asked what it is need not be asked which one it is.
    if (alike.length < 2 || !isTaken(one)) return one;
    const others = alike.filter((other) => other !== one).map(({ column }) => `“${column.heading}”`);
    const question: ColumnQuestion = {
      sentence: `It seems to hold ${channel}, as does ${others.join(' and ')}: which one is to be read?`,
      keepsOut: true,
      choices: [
        { title: `this one`, means: one.means },
        { title: 'not this one', means: { heading: one.means.heading } },
      ],
    };
    return { ...one, asks: [question, ...one.asks] };
  });
}

/** How closely the gyro must follow the sticks for its sign and size to be told by them. */
const follows = 0.6;
/** A radian in degrees, with room for a craft that follows badly. */
const radian = [30, 110] as const;

/** A gyro goes where the sticks send it, at about that rate: where it does not, a sign or a unit is another one. */
function againstWanted(proposed: readonly ProposedColumn[], survey: RowSurvey): readonly ProposedColumn[] {
  const valuesOf = ({ column, means }: ProposedColumn) => {
    const values =
      survey.columns.find(({ heading }) => heading === column.heading)?.values ?? new Float64Array(0);
    const factor = unitOf(means.unit ?? '').factor * (means.scale ?? 1);
    return values.map((value) => value * factor);
  };
  return proposed.map((one) => {
    const axis = /^wanted\.(.*)$/.exec(one.means.channel ?? '')?.[1];
    const gyro =
      axis === undefined ? undefined : proposed.find(({ means }) => means.channel === `gyro.${axis}`);
    if (gyro === undefined) return one;
    const { slope, correlation } = fitted(valuesOf(one), valuesOf(gyro));
    if (Math.abs(correlation) < follows) return one;
    const size = Math.abs(slope);
    const asks = [...one.asks];
    if (between(size) || between(1 / size))
      asks.unshift({
        sentence: `The gyro turns ${shortNumber(size)} times as fast as is asked for here, as if one of the two were in degrees and the other in radians: in which unit is it?`,
        keepsOut: true,
        choices: ['deg/s', 'rad/s'].map((unit) => ({ title: unit, means: { ...one.means, unit } })),
      });
    if (correlation < 0)
      asks.unshift({
        sentence: `The gyro turns against what is asked for here, so that one of the two has the other sign: is more to the right, nose up or clockwise here?`,
        keepsOut: false,
        choices: [
          { title: 'yes', means: one.means },
          { title: 'no, less is', means: { ...one.means, reversed: true } },
        ],
      });
    return { ...one, asks };
  });
}

function between(times: number): boolean {
  return times >= radian[0] && times <= radian[1];
}

/** The line through zero by least squares, and how closely two signals go together. */
function fitted(
  first: Float64Array,
  second: Float64Array,
): { readonly slope: number; readonly correlation: number } {
  let [both, ofFirst, ofSecond] = [0, 0, 0];
  for (let at = 0; at < first.length; at += 1) {
    const [one, other] = [first[at] as number, second[at] as number];
    if (Number.isNaN(one) || Number.isNaN(other)) continue;
    both += one * other;
    ofFirst += one * one;
    ofSecond += other * other;
  }
  if (ofFirst === 0 || ofSecond === 0) return { slope: 0, correlation: 0 };
  return { slope: both / ofFirst, correlation: both / Math.sqrt(ofFirst * ofSecond) };
}

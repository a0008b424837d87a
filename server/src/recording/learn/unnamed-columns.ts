import type { RecordingColumns } from '../../catalog/model/recording-columns';
import type { LayoutColumn } from '../../catalog/model/recording-layout';
import { axisNames } from '../../figures/axis-names';
import type { SurveyedColumn } from '../read/survey';
import { type Behaviour, jointBehaviour } from './behaviour';
import { columnClock } from './column-clock';
import { columnOutput } from './column-output';
import { columnUnit, type UnitFound } from './column-unit';
import type { SaidHeading } from './heading-words';
import type { ColumnQuestion, ProposedColumn } from './proposed-column';

interface Unnamed {
  readonly column: SurveyedColumn;
  readonly said: SaidHeading;
  readonly behaviour: Behaviour;
}

/** What columns without headings may hold by what their numbers do. Only the clock is sure; all else is asked. */
export function unnamedColumns(
  columns: readonly Unnamed[],
  words: RecordingColumns,
): readonly ProposedColumn[] {
  const clock = columns.find(({ behaviour }) => behaviour.rises);
  const motors = rowOf(columns, 4, (one) => one !== clock && isOutput(one.behaviour));
  const gyro = rowOf(columns, 3, (one) => one !== clock && isTurning(one.behaviour));
  return columns.map((one) => {
    const { column, said, behaviour } = one;
    const bare: LayoutColumn = { heading: column.heading };
    if (one === clock) return proposal(one, columnClock({ ...bare, channel: 'time' }, said, behaviour), []);
    const [motorAt, axis] = [motors.indexOf(one), axisNames[gyro.indexOf(one)]];
    if (motorAt >= 0) {
      const found = columnOutput(
        { ...bare, channel: `motor.${motorAt + 1}` },
        null,
        jointBehaviour([behaviour, ...motors.map((motor) => motor.behaviour)]),
        words,
      );
      return proposal(one, found, [
        guessed('four columns side by side lie between idle and full', found, `motor ${motorAt + 1}`),
      ]);
    }
    const kind = words.kinds.find((row) => row.kind === 'gyro');
    if (axis !== undefined && kind !== undefined) {
      const found = columnUnit(
        { ...bare, channel: `gyro.${axis}` },
        kind,
        said,
        jointBehaviour([behaviour, ...gyro.map((other) => other.behaviour)]),
      );
      return proposal(one, found, [
        guessed('three columns side by side rest near zero', found, `the gyro about ${axis}`),
      ]);
    }
    return {
      column,
      means: bare,
      why: 'It has no heading, and nobody knows what it holds.',
      asks: [],
      leftOut: 'unknown',
    };
  });
}

function proposal(
  { column }: Unnamed,
  { means, why, asks }: UnitFound,
  first: readonly ColumnQuestion[],
): ProposedColumn {
  return { column, means, why: `It has no heading; ${why}.`, asks: [...first, ...asks], leftOut: null };
}

function guessed(what: string, { means }: UnitFound, title: string): ColumnQuestion {
  return {
    sentence: `It has no heading; ${what}: is it ${title}?`,
    keepsOut: true,
    choices: [
      { title: `yes, ${title}`, means },
      { title: 'something else', means: { heading: means.heading } },
    ],
  };
}

/** The first so many columns side by side that are so; none where there are fewer. */
function rowOf(
  columns: readonly Unnamed[],
  count: number,
  isSo: (one: Unnamed) => boolean,
): readonly Unnamed[] {
  const start = columns.findIndex(
    (_, at) => columns.length - at >= count && columns.slice(at, at + count).every(isSo),
  );
  return start < 0 ? [] : columns.slice(start, start + count);
}

function isOutput({ least, most }: Behaviour): boolean {
  return most > least && ((least >= 900 && most <= 2100) || (least >= 0 && most <= 1));
}

function isTurning({ least, most, middle, large }: Behaviour): boolean {
  return least < 0 && most > 0 && Math.abs(middle) < 0.25 * large;
}

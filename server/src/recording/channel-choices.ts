import type { ColumnKind, RecordingColumns } from '../catalog/model/recording-columns';
import { axisNames } from '../figures/axis-names';

/** What a column may be taken for. */
export interface ChannelOffered {
  /** `gyro.roll`, `motor.1`, `time` */
  readonly channel: string;
  readonly title: string;
  /** Units that its numbers may have; none where it counts from idle to full. */
  readonly units: readonly string[];
}

/** Motors that are offered where a file has no more columns of them. */
const fewestMotors = 4;

/** All that a column may be taken for, in the order in which a pilot looks for it. */
export function channelsOffered({ kinds }: RecordingColumns, motors: number): readonly ChannelOffered[] {
  const count = Math.max(fewestMotors, motors);
  return kinds.flatMap((kind): readonly ChannelOffered[] => {
    const units = [...new Set(kind.ways.map(({ unit }) => unit))].filter((unit) => unit !== '');
    return namesOf(kind, count).map(({ channel, title }) => ({ channel, title, units }));
  });
}

function namesOf({ kind, title }: ColumnKind, motors: number) {
  switch (kind) {
    case 'other':
      return [];
    case 'time':
      return [
        { channel: 'time', title },
        { channel: 'time-parts', title: `parts of ${title}, beside whole counts in another column` },
      ];
    case 'gyro':
    case 'unfiltered-gyro':
    case 'wanted':
      return axisNames.map((axis) => ({ channel: `${kind}.${axis}`, title: `${title}: ${axis}` }));
    case 'motor':
    case 'speed':
      return Array.from({ length: motors }, (_, at) => ({
        channel: `${kind}.${at + 1}`,
        title: `${title}: motor ${at + 1}`,
      }));
    default:
      return [{ channel: kind, title }];
  }
}

import type { RecordingReport } from '../report';
import type { FoundInFlight } from './found';
import { measuredText, shareText } from './measured-text';

/** Shares of the time, and % over all together; common practice. */
const most = { atLimit: 0.01, harder: 6 };

/** Motors at their limit, and such that work harder than the others. */
export function motorsFound({ motors }: RecordingReport): readonly FoundInFlight[] {
  const all = motors.told ?? [];
  const atLimit = all
    .filter(({ atFull }) => atFull > most.atLimit)
    .map(({ motor, atFull }) => ({
      id: 'motors/at-limit',
      values: { motor: `${motor}`, share: shareText(atFull) },
      proposals: [],
    }));
  const harder = all
    .filter((one) => all.length > 1 && one.harder.low > most.harder)
    .map((one) => ({
      id: 'motors/one-works-harder',
      values: { motor: `${one.motor}`, harder: measuredText(one.harder) },
      proposals: [],
    }));
  return [...atLimit, ...harder];
}

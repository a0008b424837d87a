import type { CraftView } from '../../craft/view';
import { workingOf } from '../../figures/filter-chain';
import { stagesOfKind } from '../../figures/filter-stages';
import { chainDelay } from '../../physics/filter';
import { alias } from '../../physics/sampling';
import { shortNumber } from '../../units/number-text';
import type { RecordingReport } from '../report';
import { flownOn } from './flown';
import type { FoundInFlight } from './found';
import { tonesBefore } from './tones';

/** The delay of a filter is told at this frequency, where a craft still holds itself, Hz. */
const delayAt = 30;
const leastSeconds = 10;

/** Fixed notches of the gyro with no tone in their band, in a recording from before the filters. */
export function idleNotches(report: RecordingReport, view: CraftView): readonly FoundInFlight[] {
  const peaks = tonesBefore(report.noise.told ?? []);
  if (peaks === null || report.seconds < leastSeconds) return [];
  const { when } = flownOn(view, report.name);
  return stagesOfKind(view, 'notch').flatMap((stage) => {
    const [centre, width] = [view.quantity(`${stage.path}.centre`), view.quantity(`${stage.path}.width`)];
    const filters = workingOf(view, stage)?.value.all(null) ?? [];
    if (stage.chain !== 'gyro' || centre === null || width === null || filters.length === 0) return [];
    // What lies above half of the rows' rate shows folded down, and that may be anything.
    if (centre + width / 2 >= report.rate / 2) return [];
    const meets = peaks.some(({ frequency, order, mayBeFolded }) => {
      const seen = alias(frequency.likely, report.rate);
      const off = order === null || mayBeFolded ? width : 0.3 * centre + width;
      return Math.abs(seen - centre) <= off;
    });
    if (meets) return [];
    const delay = 1000 * chainDelay({ filters }, delayAt);
    return [
      {
        id: 'shake/notch-takes-nothing',
        values: {
          filter: `Filter ${stage.number} of the gyro`,
          centre: view.short(centre, 'Hz'),
          delay: `${shortNumber(delay, 2)} ms`,
        },
        proposals: [
          {
            title: `Turn filter ${stage.number} of the gyro off`,
            sets: [
              {
                path: `${stage.path}.kind`,
                value: 'none',
                comment: `measured ${when}: nothing stands out at ${view.short(centre, 'Hz')}`,
              },
            ],
          },
        ],
      },
    ];
  });
}

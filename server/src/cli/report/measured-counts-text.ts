import type { FamilyMeasured } from '../../features/board/measured-counts';
import { plainNumber } from '../../units/number-text';
import type { MeasuredListing } from '../files/flown-listing';

/** What a recording says of a listing's gains, and how to say that it is right; `path`: of the listing. */
export function measuredCountsText(
  { families, why, flown, craft }: MeasuredListing,
  { path, isTaken }: { readonly path: string; readonly isTaken: boolean },
): readonly string[] {
  const proposed = families.filter(({ one }) => one !== null);
  return [
    `By ${flown}, on the craft of ${craft}:`,
    ...(families.length === 0 ? [`  ${why ?? noGain}`] : []),
    ...families.flatMap(({ term, evidence }) => [`  ${term}: ${evidence}`]),
    ...(proposed.length === 0 || isTaken
      ? []
      : [
          `If ${path} is what the board held in that flight, say --flown; else say what is right:`,
          ...proposed.flatMap(confirmations),
        ]),
  ];
}

const noGain =
  'No setting of the listing is known to be a gain of an axis: say which is by --role "setting=control.roll.proportional".';

function confirmations({ numbers }: FamilyMeasured): readonly string[] {
  return numbers.flatMap(({ key, means, row }) => {
    const { unit = '', scale = 1 } = row?.counts ?? {};
    return row === null
      ? []
      : [`  --confirm '${key}=${means} unit ${unit} scale ${plainNumber(1 / scale, 6)}'`];
  });
}

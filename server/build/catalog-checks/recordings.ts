import type { Bundle } from '../../src/catalog/model/bundle';
import { parseUnit } from '../../src/units/unit';
import { repeated } from './places';

/** Units that there are not, sizes without a reason, and kinds or words of units that stand twice. */
export function recordingProblems({ recordings: { kinds, units, fulls } }: Bundle): readonly string[] {
  const said = (what: string) => `schemas/recordings.json: ${what}`;
  const named = [
    ...kinds.flatMap(({ kind, ways }) => ways.map(({ unit }) => [kind, unit] as const)),
    ...units.map(({ unit }) => ['units', unit] as const),
  ];
  return [
    ...repeated(kinds.map(({ kind }) => kind)).map((one) => said(`the kind ${one} stands there twice`)),
    ...repeated(units.flatMap((unit) => unit.said)).map((one) => said(`the word ${one} says two units`)),
    ...named
      .filter(([, unit]) => parseUnit(unit).unit === undefined)
      .map(([at, unit]) => said(`${at}: there is no unit ${unit}`)),
    ...kinds.flatMap(({ kind, sizes, because }) => {
      if (sizes === undefined) return [];
      const [low, high] = sizes;
      if (low >= high) return [said(`${kind}: its sizes go from ${low} to ${high}`)];
      return because === undefined ? [said(`${kind}: why these sizes?`)] : [];
    }),
    ...fulls
      .filter(({ full, idle }) => idle >= full)
      .map(({ what }) => said(`${what}: idle lies at full or above`)),
  ];
}

import type { Catalog } from '../catalog/catalog';
import type { Fault } from '../catalog/faults/fault';
import { readQuantity } from '../catalog/faults/quantities';
import type { Board } from '../catalog/model/hardware';

/**
 * Hardware that no board has: each figure is held against the range of the setting that means the same, so that
 * nothing computed from a profile divides by nothing. The quantities themselves can be read (`boardFaults`).
 */
export function hardwareFaults(board: Board, catalog: Catalog): readonly Fault[] {
  const { gyro, packInput, rails, log, serialClock } = board;
  const possible = (at: Fault['at'], text: string | null | undefined, name: string) =>
    text == null ? [] : outside(at, text, name, catalog);
  return [
    ...portFaults(board),
    ...rails.flatMap(({ voltage, currentLimit }, index) => [
      ...possible(['rails', index, 'voltage'], voltage, 'wire.<device>.supply'),
      ...possible(['rails', index, 'currentLimit'], currentLimit, 'wire.<device>.current'),
    ]),
    ...gyro.rates.flatMap((rate, index) => possible(['gyro', 'rates', index], rate, 'gyro.rate')),
    ...possible(['gyro', 'fullScale'], gyro.fullScale, 'gyro.full-scale'),
    ...possible(['packInput', 'dividerUpper'], packInput.dividerUpper, 'power.divider-upper'),
    ...possible(['packInput', 'dividerLower'], packInput.dividerLower, 'power.divider-lower'),
    ...possible(['packInput', 'reference'], packInput.reference, 'power.reference-voltage'),
    ...possible(['packInput', 'mostCells'], String(packInput.mostCells), 'pack.<name>.cells'),
    ...possible(['log', 'size'], log?.size, 'record.size'),
    ...positive(['serialClock'], serialClock),
  ];
}

function outside(at: Fault['at'], text: string, name: string, catalog: Catalog): readonly Fault[] {
  const known = catalog.parameters.get(name);
  if (known?.range === undefined) return [];
  const { parameter, range } = known;
  const value =
    parameter.kind === 'count' ? Number(text) : readQuantity(text, known.dimensionName ?? '').value;
  if (value === undefined || (value >= range.low && value <= range.high)) return [];
  const ends = parameter.kind === 'quantity' || parameter.kind === 'count' ? parameter.range : [];
  return [{ at, message: `${text} lies outside what is possible: ${ends.join(' to ')}` }];
}

function positive(at: Fault['at'], text: string | undefined): readonly Fault[] {
  const value = text === undefined ? undefined : readQuantity(text, 'frequency').value;
  return value === undefined || value > 0 ? [] : [{ at, message: `${text} is no clock: it must tick` }];
}

/** What a port can't do upside down when it can't do it at all, and a direction that stands there twice. */
function portFaults({ ports }: Board): readonly Fault[] {
  return ports.flatMap(({ name, directions, invertedIn, invertedOut }, index) => {
    const at = ['ports', index];
    return [
      ...(invertedIn && !directions.includes('in')
        ? [{ at: [...at, 'invertedIn'], message: `${name} reads nothing, so that it reads nothing inverted` }]
        : []),
      ...(invertedOut && !directions.includes('out')
        ? [
            {
              at: [...at, 'invertedOut'],
              message: `${name} sends nothing, so that it sends nothing inverted`,
            },
          ]
        : []),
      ...(new Set(directions).size < directions.length
        ? [{ at: [...at, 'directions'], message: `${name} names a direction twice` }]
        : []),
    ];
  });
}

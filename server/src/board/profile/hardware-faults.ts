import type { Catalog } from '../../catalog/catalog';
import type { Fault } from '../../catalog/faults/fault';
import { readQuantity } from '../../catalog/faults/quantities';
import type { Hardware, Port } from '../../catalog/model/board-hardware';

/**
 * Hardware that no board has: each figure is held against the range of the setting that means the same, so that
 * nothing computed from a profile divides by nothing. The quantities themselves can be read (`boardFaults`).
 */
export function hardwareFaults(hardware: Hardware, catalog: Catalog): readonly Fault[] {
  const { ports = [], rails = [], gyro, packInput, log, serialClock } = hardware;
  const cells = packInput?.mostCells;
  const possible = (at: Fault['at'], text: string | null | undefined, name: string) =>
    text == null ? [] : outside(at, text, name, catalog);
  return [
    ...ports.flatMap(portFaults),
    ...rails.flatMap(({ voltage, currentLimit }, index) => [
      ...possible(['rails', index, 'voltage'], voltage, 'wire.<device>.supply'),
      ...possible(['rails', index, 'currentLimit'], currentLimit, 'wire.<device>.current'),
    ]),
    ...(gyro?.rates ?? []).flatMap((rate, index) => possible(['gyro', 'rates', index], rate, 'gyro.rate')),
    ...possible(['gyro', 'fullScale'], gyro?.fullScale, 'gyro.full-scale'),
    ...possible(['packInput', 'dividerUpper'], packInput?.dividerUpper, 'power.divider-upper'),
    ...possible(['packInput', 'dividerLower'], packInput?.dividerLower, 'power.divider-lower'),
    ...possible(['packInput', 'reference'], packInput?.reference, 'power.reference-voltage'),
    ...possible(['packInput', 'mostCells'], cells === undefined ? null : String(cells), 'pack.<name>.cells'),
    ...possible(['log', 'size'], log?.size, 'record.size'),
    ...positive(['serialClock'], serialClock),
    ...printedFaults(hardware.motorsAsPrinted ?? [], catalog),
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
function portFaults({ name, directions, invertedIn, invertedOut }: Port, index: number): readonly Fault[] {
  if (directions === undefined) return [];
  const at = ['ports', index];
  return [
    ...(invertedIn === true && !directions.includes('in')
      ? [{ at: [...at, 'invertedIn'], message: `${name} reads nothing, so that it reads nothing inverted` }]
      : []),
    ...(invertedOut === true && !directions.includes('out')
      ? [{ at: [...at, 'invertedOut'], message: `${name} sends nothing, so that it sends nothing inverted` }]
      : []),
    ...(new Set(directions).size < directions.length
      ? [{ at: [...at, 'directions'], message: `${name} names a direction twice` }]
      : []),
  ];
}

/** Its drawing shows motors by the words in which a script names them. */
function printedFaults(motors: readonly string[], catalog: Catalog): readonly Fault[] {
  const known = catalog.parameters.get('motor.order');
  if (known === undefined) return [];
  const words = catalog.choices(known.parameter).map(({ name }) => name);
  return motors.flatMap((name, index) =>
    words.includes(name)
      ? []
      : [
          {
            at: ['motorsAsPrinted', index],
            message: `${name} is no place of a motor; ${words.join(', ')} are`,
          },
        ],
  );
}

import type { Hardware } from '../model/board-hardware';
import type { Chemistry, Link, Region } from '../model/hardware';
import { type Fault, faultsWithin, repeated } from './fault';
import { quantityFaults, readInterval } from './quantities';

/** Quantities of a board's hardware, and names that stand there twice. */
export function hardwareNumberFaults({
  ports = [],
  rails = [],
  gyro,
  packInput,
  log,
  ...hardware
}: Hardware): readonly Fault[] {
  return [
    ...rails.flatMap(({ voltage, currentLimit }, index) => [
      ...quantityFaults(['rails', index, 'voltage'], voltage, 'voltage'),
      ...quantityFaults(['rails', index, 'currentLimit'], currentLimit, 'current'),
    ]),
    ...quantityFaults(['serialClock'], hardware.serialClock, 'frequency'),
    ...(gyro?.rates ?? []).flatMap((rate, index) =>
      quantityFaults(['gyro', 'rates', index], rate, 'frequency'),
    ),
    ...quantityFaults(['gyro', 'fullScale'], gyro?.fullScale, 'angular-rate'),
    ...quantityFaults(['packInput', 'dividerUpper'], packInput?.dividerUpper, 'resistance'),
    ...quantityFaults(['packInput', 'dividerLower'], packInput?.dividerLower, 'resistance'),
    ...quantityFaults(['packInput', 'reference'], packInput?.reference, 'voltage'),
    ...quantityFaults(['log', 'size'], log?.size, 'storage'),
    ...printedFaults(hardware),
    ...repeated(ports.map(({ name }) => name)).map((name) => ({
      at: ['ports'],
      message: `port ${name} stands there twice`,
    })),
  ];
}

function printedFaults({
  motorsAsPrinted = [],
  motorOutputs,
}: Pick<Hardware, 'motorsAsPrinted' | 'motorOutputs'>): readonly Fault[] {
  const at = ['motorsAsPrinted'];
  const twice = repeated(motorsAsPrinted).map((name) => ({
    at,
    message: `motor ${name} stands there twice`,
  }));
  if (motorOutputs === undefined || motorsAsPrinted.length <= motorOutputs) return twice;
  return [...twice, { at, message: `${motorsAsPrinted.length} motors at ${motorOutputs} outputs` }];
}

/** Quantities of a serial link: each of its dimension. */
export function linkFaults(link: Link): readonly Fault[] {
  return [
    ...quantityFaults(['baud'], link.baud, 'symbol-rate'),
    ...quantityFaults(['frameInterval'], link.frameInterval, 'time'),
    ...link.supply.flatMap((supply, index) => quantityFaults(['supply', index], supply, 'voltage')),
  ];
}

type CellVoltage = 'full' | 'nominal' | 'warn' | 'land' | 'storage' | 'empty';

const cellVoltages: readonly CellVoltage[] = ['empty', 'land', 'warn', 'nominal', 'full', 'storage'];

/** Each must lie above the one before it. */
const rising: readonly (readonly [low: CellVoltage, high: CellVoltage])[] = [
  ['empty', 'land'],
  ['land', 'warn'],
  ['warn', 'nominal'],
  ['nominal', 'full'],
  ['empty', 'storage'],
  ['storage', 'full'],
];

/** Voltages of a cell: in the order in which a pack goes through them. */
export function chemistryFaults(cell: Chemistry): readonly Fault[] {
  const unreadable = cellVoltages.flatMap((name) => quantityFaults([name], cell[name], 'voltage'));
  if (unreadable.length > 0) return unreadable;
  return [...restFaults(cell), ...orderFaults(cell)];
}

function orderFaults(cell: Chemistry): readonly Fault[] {
  return rising.flatMap(([low, high]) => {
    if (readInterval([], [cell[low], cell[high]], 'voltage').faults.length === 0) return [];
    return [{ at: [high], message: `${cell[high]} must lie above ${low}, which is ${cell[low]}` }];
  });
}

/** Charge and voltage of a rested cell rise together from point to point. */
function restFaults({ atRest = [] }: Chemistry): readonly Fault[] {
  const unreadable = atRest.flatMap(({ charge, voltage }, index) => [
    ...quantityFaults(['atRest', index, 'charge'], charge, 'ratio'),
    ...quantityFaults(['atRest', index, 'voltage'], voltage, 'voltage'),
  ]);
  if (unreadable.length > 0) return unreadable;
  return atRest.slice(1).flatMap((point, index) => {
    const before = atRest[index] ?? point;
    return (['charge', 'voltage'] as const).flatMap((what) =>
      readInterval([], [before[what], point[what]], what === 'charge' ? 'ratio' : 'voltage').faults.map(
        () => ({
          at: ['atRest', index + 1, what],
          message: `${point[what]} must be more than ${before[what]} at the point before`,
        }),
      ),
    );
  });
}

/** The words without which no text about rules may stand. */
const caution = [/local rules and the licence decide/i, /no legal advice/i];

/** Bands and limits of a region, and the caution that its text must give. */
export function regionFaults({ summary, permits }: Region): readonly Fault[] {
  const bands = permits.flatMap(({ from, to, limit }, index) =>
    faultsWithin(
      ['permits', index],
      [
        ...readInterval([], [from, to], 'frequency').faults.map(({ at, message }) => ({
          at: [at[0] === 0 ? 'from' : 'to'],
          message,
        })),
        ...quantityFaults(['limit'], limit, 'power'),
      ],
    ),
  );
  if (caution.every((words) => words.test(summary))) return bands;
  const message = 'must say that local rules and the licence decide, and that it is no legal advice';
  return [...bands, { at: ['summary'], message }];
}

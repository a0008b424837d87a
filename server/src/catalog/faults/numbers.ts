import type { Parameter, ParameterOf } from '../model/parameter';
import { type Fault, faultsWithin } from './fault';
import { type Ends, readInterval, readQuantity, unitFaults } from './quantities';

/** Range, usual range, unit and default of a parameter: each inside the one around it. */
export function numberFaults(parameter: Parameter): readonly Fault[] {
  switch (parameter.kind) {
    case 'quantity':
      return quantityParameter(parameter);
    case 'range':
      return rangeParameter(parameter);
    case 'count':
      return countParameter(parameter);
    case 'curve':
      return curveParameter(parameter);
    default:
      return [];
  }
}

interface WithIntervals {
  readonly dimension: string;
  readonly unit: string;
  readonly range: readonly [string, string];
  readonly usual: readonly [string, string];
}

/** The usual ends, after checking that they lie in the range. */
function intervals(described: WithIntervals): { readonly usual?: Ends; readonly faults: readonly Fault[] } {
  const range = readInterval(['range'], described.range, described.dimension);
  const usual = readInterval(['usual'], described.usual, described.dimension);
  const faults = [
    ...unitFaults(['unit'], described.unit, described.dimension),
    ...range.faults,
    ...usual.faults,
  ];
  if (range.ends !== undefined && usual.ends !== undefined)
    faults.push(...inside(['usual'], usual.ends, range.ends, 'the range'));
  return { ...(usual.ends === undefined ? {} : { usual: usual.ends }), faults };
}

function inside(at: Fault['at'], inner: Ends, outer: Ends, of: string): readonly Fault[] {
  return inner[0] < outer[0] || inner[1] > outer[1] ? [{ at, message: `reaches outside ${of}` }] : [];
}

function quantityParameter(parameter: ParameterOf<'quantity'>): readonly Fault[] {
  const { usual, faults } = intervals(parameter);
  const text = parameter.default?.value;
  if (text === undefined || parameter.orWords?.some((word) => word.name === text)) return faults;
  return [...faults, ...defaultFaults(text, parameter.dimension, usual)];
}

const defaultValue = ['default', 'value'] as const;

function defaultFaults(text: string, dimension: string, usual: Ends | undefined): readonly Fault[] {
  const read = readQuantity(text, dimension);
  if (read.problem !== undefined) return [{ at: defaultValue, message: read.problem }];
  return usual === undefined ? [] : outsideUsual(read.value, usual);
}

function outsideUsual(value: number, usual: Ends): readonly Fault[] {
  return value < usual[0] || value > usual[1]
    ? [{ at: defaultValue, message: 'lies outside the usual range' }]
    : [];
}

function rangeParameter(parameter: ParameterOf<'range'>): readonly Fault[] {
  const { usual, faults } = intervals(parameter);
  if (parameter.default === null) return faults;
  const [low = '', high = ''] = parameter.default.value.split('..');
  const unit = high.replace(/^[\s\d.+-]+/, '');
  const lower = /[A-Za-z%]/.test(low) ? low : `${low.trim()} ${unit}`;
  const assumed = readInterval([], [lower, high], parameter.dimension);
  const ends = assumed.faults.map(({ message }) => ({ at: defaultValue, message }));
  if (assumed.ends === undefined || usual === undefined) return [...faults, ...ends];
  return [...faults, ...ends, ...inside(defaultValue, assumed.ends, usual, 'the usual range')];
}

function countParameter({ range, usual, orWords, default: assumed }: ParameterOf<'count'>): readonly Fault[] {
  const faults: Fault[] = [];
  if (range[0] >= range[1]) faults.push({ at: ['range'], message: `${range.join(' to ')} does not rise` });
  if (usual[0] > usual[1]) faults.push({ at: ['usual'], message: `${usual.join(' to ')} falls` });
  faults.push(...inside(['usual'], usual, range, 'the range'));
  const text = assumed?.value;
  if (text === undefined || orWords?.some((word) => word.name === text)) return faults;
  if (/^-?\d+$/.test(text)) return [...faults, ...outsideUsual(Number(text), usual)];
  return [...faults, { at: defaultValue, message: `"${text}" is not a whole number` }];
}

function curveParameter({ across, up, default: assumed }: ParameterOf<'curve'>): readonly Fault[] {
  const width = readInterval(['across', 'range'], across.range, across.dimension);
  const height = intervals(up);
  const faults = [
    ...unitFaults(['across', 'unit'], across.unit, across.dimension),
    ...width.faults,
    ...faultsWithin(['up'], height.faults),
  ];
  if (assumed === null) return faults;
  const points = assumed.value.split(',').flatMap((point) => {
    const [from = '', to = ''] = point.split('->').map((text) => text.trim());
    return [
      ...defaultFaults(from, across.dimension, width.ends),
      ...defaultFaults(to, up.dimension, height.usual),
    ];
  });
  return [...faults, ...points];
}
